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
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.TextReport;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.sync.SyncException;
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
      "  boothlamp report 2026-03-01..2026-03-29 --format json",
      "  boothlamp report --log collected.db",
      "  boothlamp report --database postgresql://db.school.example/boothlamp \\",
      "    --user instructor --password-file ~/boothlamp-password"
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
      description =
          "Read this log file instead of the one in the settings: of a booth, or collected.")
  private Path log;

  @ArgGroup(exclusive = false, heading = "%nFrom a database of several booths:%n")
  private DatabaseOption database;

  ReportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, SyncException {
    ShiftSpan asked = askedSpan();
    if (database != null) {
      refuseLogBesideDatabase();
      write(ShiftReport.of(only(database.read(asked)), asked, database.booth(), ""));
      return ExitCode.OK;
    }
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
      return only(reader.read(asked.fromWallMillis(), asked.untilWallMillis()));
    }
  }

  private void refuseLogBesideDatabase() {
    if (log != null) {
      throw new ParameterException(
          spec.commandLine(), "--log and --database are two places to read from: give one");
    }
  }

  private ShiftRecords only(ShiftRecords records) {
    if (trainee == null) {
      return records;
    }
    return new ShiftRecords(
        records.runs().stream().filter(run -> run.trainee().equals(trainee)).toList(),
        records.touches().stream().filter(touch -> touch.trainee().equals(trainee)).toList(),
        List.copyOf(records.events()));
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
