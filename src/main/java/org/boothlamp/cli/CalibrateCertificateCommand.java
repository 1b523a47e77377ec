package org.boothlamp.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.report.CalibrationCertificate;
import org.boothlamp.report.CalibrationCsv;
import org.boothlamp.report.CalibrationSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes one calibration as a page to print and sign. */
@Command(
    name = "certificate",
    header = "Writes one calibration as a page to print and sign, or as a table.",
    description = {
      "The page is one HTML file with everything in it; it prints on one or two sheets of A4 or Letter."
          + " It is the school's own record, not a certificate of an accredited laboratory.",
      "",
      "Examples:",
      "  boothlamp calibrate certificate 7",
      "  boothlamp calibrate certificate 7 --csv --out -"
    })
final class CalibrateCertificateCommand implements Callable<Integer> {

  private static final String STANDARD_OUTPUT = "-";

  private final Parts parts;
  private final Terminal terminal;

  @Mixin private SettingsOption settingsOption;

  @Parameters(index = "0", paramLabel = "N", description = "Number of the calibration.")
  private long number;

  @Option(
      names = "--csv",
      description = "Points and results as a table (RFC 4180) instead of the page.")
  private boolean csv;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description =
          "Write here; - is standard output. Without it: calibration-N.html, or .csv, in this"
              + " folder.")
  private String out;

  @Option(names = "--force", description = "Replace a file that is there already.")
  private boolean force;

  CalibrateCertificateCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    String page;
    try (CalibrationBook book = CalibrationLookup.open(parts, settingsOption.read())) {
      page = page(CalibrationLookup.sheet(book, number));
    }
    if (STANDARD_OUTPUT.equals(out)) {
      PrintWriter writer = terminal.writer();
      writer.print(page);
      writer.flush();
      return ExitCode.OK;
    }
    Path file = Path.of(out == null ? defaultName(number, csv) : out);
    if (force) {
      WholeFile.replace(file, page);
    } else {
      WholeFile.create(file, page);
    }
    terminal.err().println("boothlamp: calibration " + number + " is in " + file);
    return ExitCode.OK;
  }

  private String page(CalibrationSheet sheet) {
    return csv ? CalibrationCsv.render(sheet) : CalibrationCertificate.render(sheet);
  }

  static String defaultName(long number, boolean csv) {
    return "calibration-" + number + (csv ? ".csv" : ".html");
  }
}
