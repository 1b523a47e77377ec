package org.boothlamp.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes a calibration out of use. */
@Command(
    name = "withdraw",
    header = "Withdraws a calibration from a day on, with a reason.",
    description = {
      "The record stays. From that day on nothing counts as scaled by it; a running monitor goes back to"
          + " the calibration before it within a second, as soon as no arc burns. Reports say which runs it"
          + " scaled since, and boothlamp report --calibration N computes them again under another one.",
      "",
      "Example:",
      "  boothlamp calibrate withdraw 3 --from 2026-03-01 --reason \"clamp was dropped\" --technician"
          + " K-2"
    })
final class CalibrateWithdrawCommand implements Callable<Integer> {

  private static final String CODE = "[A-Za-z0-9][A-Za-z0-9._-]{0,15}";

  private final Parts parts;
  private final Terminal terminal;
  private final WallClock clock = WallClock.SYSTEM;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;

  @Parameters(index = "0", paramLabel = "N", description = "Number of the calibration.")
  private long number;

  @Option(
      names = "--from",
      paramLabel = "DATE",
      required = true,
      description = "First local day from which it is not trusted, such as 2026-03-01.")
  private LocalDate from;

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      required = true,
      description = "Why, in a few words. It is kept for good.")
  private String reason;

  @Option(
      names = "--technician",
      paramLabel = "CODE",
      required = true,
      description = "Who says so: a code, never a name.")
  private String technician;

  CalibrateWithdrawCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    checkUsage();
    BoothSettings settings = settingsOption.read();
    // Looked up by a reader first, so that a wrong number makes no log.
    requireInForce(LogCalibrations.read(SettingsOption.logOf(settings)).find(number));
    long fromMillis = from.atStartOfDay(ZoneId.systemDefault()).toInstant().toEpochMilli();
    CalibrationRecord withdrawn;
    try (CalibrationBook book = parts.calibrationBook(settings)) {
      requireInForce(book.history().find(number));
      book.withdraw(
          number, new Withdrawal(fromMillis, clock.epochMillis(), technician, reason.strip()));
      withdrawn = book.history().find(number);
      say(
          withdrawn,
          LogCalibrations.inUse(
              settings, book.history(), withdrawn.channel(), LogCalibrations.moment(clock)));
    }
    sayAffected(SettingsOption.logOf(settings), withdrawn, fromMillis);
    return ExitCode.OK;
  }

  private void checkUsage() {
    if (reason.isBlank()) {
      throw refused("--reason must not be blank: say why the calibration is not trusted");
    }
    if (!technician.matches(CODE)) {
      throw refused(
          "a technician code must be 1 to 16 letters, digits, dots or hyphens, but is \""
              + technician
              + "\"; choose one such as K-2");
    }
  }

  private void requireInForce(CalibrationRecord record) {
    if (record == null) {
      throw refused("there is no calibration " + number + "; see boothlamp calibrate list");
    }
    if (!record.isAccepted()) {
      throw refused(
          "only an accepted calibration can be withdrawn, and calibration "
              + number
              + " is not accepted; see boothlamp calibrate list");
    }
    if (record.withdrawal() != null) {
      throw refused(
          "calibration " + number + " was withdrawn before: " + record.withdrawal().reason());
    }
  }

  private ParameterException refused(String why) {
    return new ParameterException(spec.commandLine(), why);
  }

  private void say(CalibrationRecord withdrawn, CalibrationRecord inUse) {
    String channel = withdrawn.channel().word();
    terminal
        .out()
        .println("Calibration " + number + " (" + channel + ") is withdrawn from " + from + " on.");
    terminal
        .out()
        .println(
            inUse == null
                ? "No calibration of the "
                    + channel
                    + " is left: the nominal scale and the stated"
                    + " accuracy hold until the next one."
                : "Calibration "
                    + inUse.number()
                    + " of "
                    + inUse.head().date()
                    + " is in use now.");
  }

  private void sayAffected(Path log, CalibrationRecord withdrawn, long fromMillis) {
    long runs;
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      runs =
          reader.read(fromMillis, Long.MAX_VALUE).runs().stream()
              .filter(run -> run.calibrations().of(withdrawn.channel()) == number)
              .count();
    }
    terminal
        .out()
        .println(
            runs == 0
                ? "No run since then was scaled by it."
                : runs
                    + (runs == 1 ? " run" : " runs")
                    + " since then scaled by it; boothlamp report "
                    + from
                    + "..today says which.");
  }
}
