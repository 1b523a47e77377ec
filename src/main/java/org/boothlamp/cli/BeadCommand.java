package org.boothlamp.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.RunRecord;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.words.Units;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Enters the length of a run's bead, and says what follows from it. */
@Command(
    name = "bead",
    header = "Enters how long a run's bead is: then travel speed, arc energy and heat input.",
    description = {
      "Measure along the bead and name the run by its number in the report. Heat input is k times arc"
          + " energy over length, k by the run's process (EN 1011-1), held against the procedure's"
          + " heat_input_kj_per_mm if it has one. A length that is entered again replaces the one before;"
          + " without a length the command shows what is known. The monitor may run meanwhile.",
      "",
      "Examples:",
      "  boothlamp bead 17 --length-mm 148",
      "  boothlamp bead last --length-in 5.8 --note \"without the crater\"",
      "  boothlamp bead 17"
    })
final class BeadCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Parameters(
      index = "0",
      paramLabel = "RUN",
      converter = RunNumber.Argument.class,
      description = "Number of the run as the report lists it, or last: the one that ended last.")
  private long run;

  @ArgGroup private Length length;

  @Option(
      names = "--note",
      paramLabel = "TEXT",
      defaultValue = "",
      description = "What should be known of it, 200 characters at most. No names.")
  private String note;

  /** One of two units. */
  private static final class Length {

    @Option(
        names = "--length-mm",
        paramLabel = "N",
        converter = NumberText.Option.class,
        description = "Length of the bead, mm.")
    private Double millimetres;

    @Option(
        names = "--length-in",
        paramLabel = "N",
        converter = NumberText.Option.class,
        description = "The same in inches.")
    private Double inches;

    private double inMillimetres() {
      return millimetres != null ? millimetres : Units.INCH_POUND.millimetres(inches);
    }
  }

  BeadCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (length == null && !note.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "--note goes with a length: give it with --length-mm or --length-in");
    }
    BoothSettings settings = settingsOption.read();
    RunAnswer.write(spec, settings, format, terminal, () -> runOf(settings));
    return ExitCode.OK;
  }

  private RunRecord runOf(BoothSettings settings) {
    if (length == null) {
      try (BoothLogReader reader = BoothLogReader.open(SettingsOption.logOf(settings))) {
        return reader.run(run);
      }
    }
    return new Beads(SettingsOption.logOf(settings), WallClock.SYSTEM)
        .enter(run, length.inMillimetres(), note, EnteredBy.NOT_SAID);
  }
}
