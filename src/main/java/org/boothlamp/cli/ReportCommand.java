package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.LongFunction;
import org.boothlamp.acquisition.RecordingIndex;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentKey;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.Glance;
import org.boothlamp.report.Progress;
import org.boothlamp.report.ProgressJson;
import org.boothlamp.report.ProgressText;
import org.boothlamp.report.Recalculation;
import org.boothlamp.report.Recomputed;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunStrip;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftHours;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.ShiftTime;
import org.boothlamp.report.SteadyRule;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.JudgingSettings;
import org.boothlamp.settings.SteadyRuleFile;
import org.boothlamp.sync.PostgresReport;
import org.boothlamp.sync.SyncException;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
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

/** Reads the booth log at the end of the shift. */
@Command(
    name = "report",
    header =
        "Reads the booth log: who welded what, how much of it inside the window, which way out.",
    description = {
      "First the class, a row a trainee; then the runs one by one; then what the numbers cannot be"
          + " trusted for. The monitor may run meanwhile.",
      "",
      "Examples:",
      "  boothlamp report",
      "  boothlamp report 2026-03-27 --trainee T-04",
      "  boothlamp report --format html --output shift.html",
      "  boothlamp report 2026-03-01..2026-03-29 --format json",
      "  boothlamp report 2026-03-01..2026-03-29 --calibration 4",
      "  boothlamp report 2026-03-01..2026-03-29 --trainee T-04 --progress",
      "  boothlamp report --log collected.db",
      "  boothlamp report --database postgresql://db.school.example/boothlamp \\",
      "    --user instructor --password-file ~/boothlamp-password"
    })
final class ReportCommand implements Callable<Integer> {

  private final Parts parts;
  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private ReportOutput output;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "SPAN",
      defaultValue = "today",
      description =
          "today (the default), yesterday, a date, a date..date, or a date and time..date and time, all"
              + " in local time.")
  private String span;

  @Option(
      names = {"-t", "--trainee"},
      paramLabel = "CODE",
      description = "Only this trainee's runs.")
  private String trainee;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description =
          "Read this log file instead of the one in the settings: of a booth, or collected.")
  private Path log;

  @Option(
      names = "--calibration",
      paramLabel = "N",
      description =
          "Compute all runs again as if calibration N had scaled its channel, such as after one was"
              + " withdrawn. The log stays as it is; the report says what is exact and what is not.")
  private Long calibration;

  @Option(
      names = "--progress",
      description =
          "Instead of the shift: each trainee's way over the days, per procedure and pass, and how far"
              + " the school's own rule is met (progress.rule_file in the settings).")
  private boolean progress;

  @ArgGroup(exclusive = false, heading = "%nFrom a database of several booths:%n")
  private DatabaseOption database;

  ReportCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, SyncException {
    ShiftSpan asked = askedSpan();
    requireFormat();
    if (database != null) {
      refuseBesideDatabase();
      requireLanguage(Language.ENGLISH);
      write(ofDatabase(asked), asked, null);
      return ExitCode.OK;
    }
    BoothSettings settings = log == null ? settingsOption.read() : null;
    requireLanguage(usualLanguage(settings));
    String booth = settings == null ? "" : settings.boothId();
    Path file = settings == null ? log : SettingsOption.logOf(settings);
    write(answer(file, asked, booth, settings), asked, settings);
    return ExitCode.OK;
  }

  /** Prints what was asked for; without settings there is no rule of a school, and no recording. */
  private void write(ShiftAnswer answer, ShiftSpan asked, BoothSettings settings)
      throws IOException {
    if (progress) {
      List<RunRecord> runs = answer.report().runs().stream().map(RunSummary::run).toList();
      write(Progress.of(runs, asked, steadyRules(settings)));
      return;
    }
    LongFunction<String> recordings =
        output.format().isJson() ? recordings(asked, settings) : id -> "";
    Phrases phrases = Phrases.in(output.language(usualLanguage(settings)));
    output.write(
        (writer, width, colour) ->
            answer.write(
                output.format(), recordings, phrases, usualUnits(settings), writer, width, colour),
        terminal);
  }

  private static Language usualLanguage(BoothSettings settings) {
    return settings == null ? Language.ENGLISH : settings.screen().language();
  }

  private static Units usualUnits(BoothSettings settings) {
    return settings == null ? Units.METRIC : settings.screen().units();
  }

  private ShiftAnswer ofDatabase(ShiftSpan asked) throws SyncException {
    PostgresReport.Found found = database.read(asked);
    long now = WallClock.SYSTEM.epochMillis();
    ShiftReport report =
        ShiftReport.of(
            only(found.records()), asked, database.booth(), "", found.calibrations(), now, null);
    Glance.Beside beside = database.beside(asked, time(found.records(), asked, null));
    return new ShiftAnswer(report, Glance.of(report, beside), Map.of());
  }

  private ShiftAnswer answer(Path file, ShiftSpan asked, String booth, BoothSettings settings) {
    try (BoothLogReader reader = BoothLogReader.open(file)) {
      ShiftRecords all = reader.read(asked.fromWallMillis(), asked.untilWallMillis());
      ShiftReport report = report(reader, only(all), asked, booth, settings);
      Glance.Beside beside = ShiftAnswer.beside(reader, asked, time(all, asked, settings));
      Map<Long, RunStrip> strips =
          output.format() == ReportFormat.HTML ? ShiftAnswer.strips(reader, report) : Map.of();
      return new ShiftAnswer(report, Glance.of(report, beside), strips);
    }
  }

  /** The length of the shift is that of the whole class, whoever was asked for. */
  private static ShiftTime time(ShiftRecords all, ShiftSpan asked, BoothSettings settings) {
    List<ShiftHours> hours =
        settings == null
            ? List.of()
            : settings.shifts().stream()
                .map(shift -> new ShiftHours(shift.name(), shift.start(), shift.end()))
                .toList();
    return ShiftTime.of(all, asked, hours, WallClock.SYSTEM.epochMillis());
  }

  private ShiftReport report(
      BoothLogReader reader,
      ShiftRecords read,
      ShiftSpan asked,
      String booth,
      BoothSettings settings) {
    BoothHistories calibrations = reader.calibrationsOfBooths();
    ShiftRecords records = read;
    Recomputed recomputed = null;
    if (calibration != null) {
      refuseOfSeveralBooths(calibrations);
      Recalculation again = recalculation(calibrations.all(), settings);
      records = recomputed(read, again, reader);
      recomputed = again.summary();
    }
    long now = WallClock.SYSTEM.epochMillis();
    return ShiftReport.of(records, asked, booth, "", calibrations, now, recomputed);
  }

  private static List<SteadyRule> steadyRules(BoothSettings settings) {
    return settings == null || settings.steadyRuleFile() == null
        ? List.of()
        : SteadyRuleFile.read(settings.steadyRuleFile());
  }

  /** Where the runs' raw recordings are now; what is deleted by then has no name. */
  private LongFunction<String> recordings(ShiftSpan asked, BoothSettings settings) {
    if (settings == null) {
      return id -> "";
    }
    RecordingIndex recordings = parts.recordings(settings).index();
    Map<Long, SegmentKey> keys;
    try (BoothLogReader reader = BoothLogReader.open(SettingsOption.logOf(settings))) {
      keys = reader.segmentKeys(asked.fromWallMillis(), asked.untilWallMillis());
    }
    return id -> nameOf(keys.get(id), recordings);
  }

  private static String nameOf(SegmentKey key, RecordingIndex recordings) {
    Path wav = key == null ? null : recordings.find(key.machineBoot(), key.startMonotonicNanos());
    return wav == null ? "" : wav.toString();
  }

  private Recalculation recalculation(CalibrationHistory history, BoothSettings settings) {
    CalibrationRecord under = history.find(calibration);
    if (under == null || !under.isAccepted()) {
      throw new ParameterException(
          spec.commandLine(),
          "--calibration "
              + calibration
              + ": "
              + (under == null ? "there is no such calibration" : "it was not accepted")
              + "; see boothlamp calibrate list");
    }
    if (settings == null) {
      return new Recalculation(under, history, JudgingRule.STANDARD, null);
    }
    JudgingSettings judging = settings.judging();
    JudgingRule rule =
        JudgingRule.ofSeconds(
            judging.averageSeconds(),
            judging.settleSeconds(),
            judging.holdSeconds(),
            judging.excursionSeconds());
    return new Recalculation(under, history, rule, settings.accuracy());
  }

  private static ShiftRecords recomputed(
      ShiftRecords records, Recalculation again, BoothLogReader reader) {
    return records.withRuns(run -> again.apply(run, reader.runTrace(run.id())));
  }

  private ShiftSpan askedSpan() {
    ZoneId zone = ZoneId.systemDefault();
    try {
      return ShiftSpan.parse(span, LocalDate.now(zone), zone);
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(spec.commandLine(), refused.getMessage(), refused);
    }
  }

  /** A trainee's way has no page of its own. */
  private void requireFormat() {
    boolean asPage = output.format() == ReportFormat.HTML || output.format() == ReportFormat.CSV;
    if (progress && asPage) {
      throw new ParameterException(
          spec.commandLine(),
          "--progress comes as text or json; leave --format out, or leave --progress out");
    }
  }

  private void requireLanguage(Language usual) {
    if (output.language(usual) == null) {
      throw new ParameterException(
          spec.commandLine(),
          "--language must be en or es, but is \"" + output.languageCode() + "\"; correct it");
    }
  }

  private void refuseBesideDatabase() {
    if (log != null) {
      throw new ParameterException(
          spec.commandLine(), "--log and --database are two places to read from: give one");
    }
    if (calibration != null) {
      throw new ParameterException(
          spec.commandLine(),
          "--calibration: runs are computed again from a log and not from a database; run this on"
              + " the booth, on a copy of its log, or on a log collected from its folder");
    }
  }

  /** Two booths have two sensors: a calibration of one says nothing of the other's runs. */
  private void refuseOfSeveralBooths(BoothHistories calibrations) {
    if (calibrations.isOfSeveralBooths()) {
      throw new ParameterException(
          spec.commandLine(),
          "--calibration: this log holds the runs of several booths, "
              + String.join(", ", calibrations.ofBooth().keySet())
              + ", and a calibration is of one; collect that booth's folder into a log of its own");
    }
  }

  private ShiftRecords only(ShiftRecords records) {
    return trainee == null ? records : records.only(trainee);
  }

  private void write(Progress found) throws IOException {
    output.write(
        (writer, width, colour) -> {
          if (output.format().isJson()) {
            ProgressJson.write(found, writer);
          } else {
            writer.write(ProgressText.render(found, width, colour));
          }
        },
        terminal);
  }
}
