package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.LogCounts;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.procedure.Pass;
import org.boothlamp.report.JsonLines;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.CountRange;
import org.boothlamp.settings.LoadedProcedure;
import org.boothlamp.settings.Problem;
import org.boothlamp.settings.ProcedureFolder;
import org.boothlamp.settings.Procedures;
import org.boothlamp.settings.SerialSourceSettings;
import org.boothlamp.settings.SettingsException;
import org.boothlamp.signal.PairScale;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Looks at everything that the monitor needs. */
@Command(
    name = "check",
    header =
        "Looks at settings, procedures, booth log, source, lamp, recordings and sync, and says how they are.",
    description = {
      "Nothing is changed, no run is judged. The source and the lamp are opened for a few seconds, which"
          + " fails while a monitor runs: stop it first, or use --settings-only.",
      "",
      "Exit code 0 if nothing is bad, 1 if a part is, 2 if settings or a procedure are refused."
    })
final class CheckCommand implements Callable<Integer> {

  private final Parts parts;
  private final Terminal terminal;
  private final List<Finding> findings = new ArrayList<>();
  private int exitCode = ExitCode.OK;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Option(
      names = "--settings-only",
      description = "Look at settings and procedures only, touch no hardware.")
  private boolean settingsOnly;

  @Option(
      names = "--hardware",
      description = {
        "Also work out what clamp, divider and converter can tell apart and how far they reach, against"
            + " the loaded procedures. If the source is not heard, lowest_count and highest_count of"
            + " the settings are taken, or 12 bits."
      })
  private boolean hardware;

  @Option(
      names = "--listen",
      paramLabel = "SECONDS",
      defaultValue = "3",
      description = {
        "How long to listen to the source, 1 to 300 s; ${DEFAULT-VALUE} by default. Some faults"
            + " show only while somebody welds, and a small drift of the clock takes half a minute."
      })
  private double listenSeconds;

  /** The passes that can be judged. */
  private final List<JudgingPlan> plans = new ArrayList<>();

  /** What the source said of its pairs; null if it was not heard. */
  private SourceFormat heard;

  CheckCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (!(listenSeconds >= 1 && listenSeconds <= 300)) {
      throw new ParameterException(
          spec.commandLine(), "--listen must be from 1 to 300 s, but is " + listenSeconds);
    }
    BoothSettings settings = settingsOption.read();
    findings.add(Finding.good("settings", settings.file() + ", booth " + settings.boothId()));
    SensorsInUse sensors = sensors(settings);
    ChannelUncertainties uncertainties =
        sensors == null ? settings.accuracy() : sensors.uncertainties();
    checkProcedures(settings, uncertainties);
    checkBadges(settings);
    findings.add(accuracy(uncertainties));
    if (sensors != null) {
      findings.addAll(new CalibrationFindings(sensors, plans, LocalDate.now()).findings());
    }
    if (!settingsOnly) {
      findings.add(log(SettingsOption.logOf(settings)));
      findings.addAll(source(settings));
      findings.add(lamp(settings));
      findings.addAll(BadgeFindings.reader(settings.badge()));
      findings.addAll(recordings(settings));
    }
    if (settings.sync() != null) {
      SyncFindings sync = new SyncFindings(settings);
      findings.addAll(settingsOnly ? sync.ofSettings() : sync.all());
    }
    if (hardware) {
      findings.addAll(
          new HardwareCheck(settings.scale(), plans, heard, stated(settings)).findings());
    }
    write();
    boolean bad = findings.stream().anyMatch(f -> f.state() == Finding.State.BAD);
    return exitCode != ExitCode.OK ? exitCode : bad ? ExitCode.SOFTWARE : ExitCode.OK;
  }

  /** The counts that the settings state; null if they do not. */
  private static CountRange stated(BoothSettings settings) {
    return settings.source() instanceof SerialSourceSettings serial ? serial.counts() : null;
  }

  /** What the sensors measure by now; null if a recording brings its own scale. */
  private static SensorsInUse sensors(BoothSettings settings) {
    if (settings.scale() == null) {
      return null;
    }
    return settings.sensors(settings.scale(), calibrations(settings), ZonedDateTime.now());
  }

  /** None if the log cannot be read: that is found where the log is looked at. */
  private static CalibrationHistory calibrations(BoothSettings settings) {
    try {
      return LogCalibrations.read(SettingsOption.logOf(settings));
    } catch (BoothLogException saidByTheLog) {
      return CalibrationHistory.NONE;
    }
  }

  private void checkProcedures(BoothSettings settings, ChannelUncertainties uncertainties) {
    ProcedureFolder folder;
    try {
      folder = ProcedureFolder.read(settings.procedures().folder());
    } catch (SettingsException refused) {
      refuse(refused.problems());
      return;
    }
    refuse(folder.problems());
    for (LoadedProcedure loaded : folder.list()) {
      for (Pass pass : loaded.procedure().passes()) {
        checkPass(loaded, pass, uncertainties);
      }
    }
  }

  private void checkBadges(BoothSettings settings) {
    try {
      findings.addAll(BadgeFindings.table(settings.badge()));
    } catch (SettingsException refused) {
      findings.addAll(BadgeFindings.refused(refused.problems()));
      exitCode = ExitCode.USAGE;
    }
  }

  private void refuse(List<Problem> problems) {
    for (Problem problem : problems) {
      findings.add(Finding.bad("procedure", problem.what(), problem.nextMove()));
      exitCode = ExitCode.USAGE;
    }
  }

  private void checkPass(LoadedProcedure loaded, Pass pass, ChannelUncertainties uncertainties) {
    try {
      JudgingPlan plan = Procedures.plan(loaded, pass.name(), uncertainties);
      plans.add(plan);
      findings.add(Finding.good("procedure", describe(loaded, plan)));
    } catch (SettingsException refused) {
      refuse(refused.problems());
    }
  }

  private static String describe(LoadedProcedure loaded, JudgingPlan plan) {
    StringBuilder text = new StringBuilder();
    text.append(loaded.procedure().id()).append(" rev ").append(loaded.procedure().revision());
    text.append(", ").append(plan.pass().name()).append(" (");
    text.append(loaded.procedure().process().word()).append(", ");
    text.append(loaded.procedure().current().word()).append("): ");
    for (int i = 0; i < plan.size(); i++) {
      CautionBand band = plan.band(i);
      text.append(i == 0 ? "" : "; ").append(Wording.window(band.window()));
      text.append(String.format(Locale.ROOT, ", amber within %.3g", band.band()));
    }
    return text.toString();
  }

  private static Finding accuracy(ChannelUncertainties uncertainties) {
    if (uncertainties.calibrated()) {
      return Finding.good("accuracy", "from the calibrations");
    }
    return Finding.note(
        "accuracy",
        "stated in the settings, not calibrated; the log marks every run so",
        "calibrate the sensors against a meter");
  }

  private static Finding log(Path file) {
    if (!Files.exists(file)) {
      return Finding.note(
          "log", file + " is not there yet", "the first run of the monitor makes it");
    }
    try (BoothLogReader reader = BoothLogReader.open(file)) {
      LogCounts counts = reader.counts();
      return Finding.good("log", file + ", " + counts.segments() + " runs");
    } catch (BoothLogException failure) {
      return Finding.bad("log", failure.getMessage(), failure.nextMove());
    }
  }

  private List<Finding> source(BoothSettings settings) {
    PairScale scale = settings.scale();
    if (scale == null) {
      return List.of(
          Finding.note("source", "a recording, which is not played here", "boothlamp replay does"));
    }
    try (SampleSource source = parts.source(settings)) {
      List<Finding> found =
          new SourceProbe(source, NanoClock.SYSTEM, plans, listenSeconds).listen(scale);
      heard = source.format();
      return found;
    } catch (RuntimeException failure) {
      return List.of(Finding.bad("source", failure.getMessage(), ""));
    }
  }

  private Finding lamp(BoothSettings settings) {
    try {
      Lamp lamp = parts.lamp(settings, terminal);
      lamp.close();
      return Finding.good("lamp", outputs(settings));
    } catch (RuntimeException failure) {
      return Finding.bad("lamp", failure.getMessage(), "");
    }
  }

  private List<Finding> recordings(BoothSettings settings) {
    int pairsPerSecond = heard == null ? 0 : heard.pairsPerSecond();
    return new RecordingFindings(settings.recordings(), parts.recordings(settings), pairsPerSecond)
        .findings();
  }

  private static String outputs(BoothSettings settings) {
    return settings.lamp().outputs().stream()
        .map(kind -> kind.toString().toLowerCase(Locale.ROOT))
        .sorted()
        .collect(Collectors.joining(", "));
  }

  private void write() throws IOException {
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      writeJson(writer);
    } else {
      findings.forEach(finding -> writeText(writer, finding));
    }
    writer.flush();
  }

  private static void writeText(PrintWriter writer, Finding finding) {
    writer.printf("%-5s %-10s %s%n", finding.state().word(), finding.part(), finding.detail());
    if (!finding.nextMove().isEmpty()) {
      writer.printf("%-16s next: %s%n", "", finding.nextMove());
    }
  }

  private void writeJson(PrintWriter writer) throws IOException {
    JsonLines json = new JsonLines(writer);
    for (Finding finding : findings) {
      json.start("check")
          .text("part", finding.part())
          .text("state", finding.state().word())
          .text("detail", finding.detail())
          .text("next_move", finding.nextMove());
      if (finding.fault() != null) {
        json.text("fault", finding.fault().word())
            .truth("judged", finding.fault().judged())
            .text("limit", finding.fault().limit());
      }
      json.end();
    }
    json.flush();
  }
}
