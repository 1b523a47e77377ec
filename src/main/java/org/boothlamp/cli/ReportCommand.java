package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.JsonReport;
import org.boothlamp.report.Progress;
import org.boothlamp.report.ProgressJson;
import org.boothlamp.report.ProgressText;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.SteadyRule;
import org.boothlamp.report.TextReport;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.SteadyRuleFile;
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
      "  boothlamp report 2026-03-01..2026-03-29 --format json",
      "  boothlamp report 2026-03-01..2026-03-29 --trainee T-04 --progress"
    })
final class ReportCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

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
      description = "Read this log file instead of the one in the settings.")
  private Path log;

  @Option(
      names = "--progress",
      description =
          "Instead of the shift: each trainee's way over the days, per procedure and pass, and how far"
              + " the school's own rule is met (progress.rule_file in the settings).")
  private boolean progress;

  ReportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    ShiftSpan asked = askedSpan();
    BoothSettings settings = log == null ? settingsOption.read() : null;
    ShiftRecords records = read(settings == null ? log : SettingsOption.logOf(settings), asked);
    if (progress) {
      write(Progress.of(records.runs(), asked, steadyRules(settings)));
    } else {
      String booth = settings == null ? "" : settings.boothId();
      write(ShiftReport.of(records, asked, booth, ""));
    }
    return ExitCode.OK;
  }

  /** A log file on its own says nothing of the school: then there is no rule. */
  private static List<SteadyRule> steadyRules(BoothSettings settings) {
    return settings == null || settings.steadyRuleFile() == null
        ? List.of()
        : SteadyRuleFile.read(settings.steadyRuleFile());
  }

  private ShiftSpan askedSpan() {
    ZoneId zone = ZoneId.systemDefault();
    try {
      return ShiftSpan.parse(span, LocalDate.now(zone), zone);
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(spec.commandLine(), refused.getMessage(), refused);
    }
  }

  private ShiftRecords read(Path file, ShiftSpan asked) {
    try (BoothLogReader reader = BoothLogReader.open(file)) {
      ShiftRecords records = reader.read(asked.fromWallMillis(), asked.untilWallMillis());
      return trainee == null ? records : only(records, trainee);
    }
  }

  private static ShiftRecords only(ShiftRecords records, String trainee) {
    return new ShiftRecords(
        records.runs().stream().filter(run -> run.trainee().equals(trainee)).toList(),
        records.touches().stream().filter(touch -> touch.trainee().equals(trainee)).toList(),
        List.copyOf(records.events()));
  }

  private void write(Progress found) throws IOException {
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      ProgressJson.write(found, writer);
    } else {
      writer.print(ProgressText.render(found, terminal.width(), terminal.colour()));
    }
    writer.flush();
  }

  private void write(ShiftReport report) throws IOException {
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      JsonReport.write(report, writer);
    } else {
      writer.print(TextReport.render(report, terminal.width(), terminal.colour()));
    }
    writer.flush();
  }
}
