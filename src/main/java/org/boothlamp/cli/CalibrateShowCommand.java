package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.report.CalibrationJson;
import org.boothlamp.report.CalibrationSheet;
import org.boothlamp.report.CalibrationText;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows one calibration. */
@Command(
    name = "show",
    header = "Shows one calibration: points, fit, uncertainty, verdict, and the checks since.",
    description = {
      "What was signed comes from the log; the rest is computed again from its points, and a"
          + " difference is said.",
      "",
      "Example:",
      "  boothlamp calibrate show 7"
    })
final class CalibrateShowCommand implements Callable<Integer> {

  private final Parts parts;
  private final Terminal terminal;

  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Parameters(index = "0", paramLabel = "N", description = "Number of the calibration.")
  private long number;

  CalibrateShowCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    try (CalibrationBook book = CalibrationLookup.open(parts, settingsOption.read())) {
      write(CalibrationLookup.sheet(book, number));
    }
    return ExitCode.OK;
  }

  private void write(CalibrationSheet sheet) throws IOException {
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      CalibrationJson.write(sheet, writer);
    } else {
      writer.print(CalibrationText.render(sheet, terminal.width(), terminal.colour()));
    }
    writer.flush();
  }
}
