package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.JsonReport;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.TextReport;
import org.boothlamp.settings.BoothSettings;
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
      "  boothlamp report 2026-03-01..2026-03-29 --format json"
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

  ReportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    ShiftSpan asked = askedSpan();
    String booth = "";
    Path file = log;
    if (file == null) {
      BoothSettings settings = settingsOption.read();
      booth = settings.boothId();
      file = SettingsOption.logOf(settings);
    }
    write(ShiftReport.of(read(file, asked), asked, booth, ""));
    return ExitCode.OK;
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
      return trainee == null ? records : records.only(trainee);
    }
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
