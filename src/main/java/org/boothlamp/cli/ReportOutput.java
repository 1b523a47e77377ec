package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Path;
import org.boothlamp.report.Colour;
import org.boothlamp.report.TextReport;
import org.boothlamp.words.Language;
import picocli.CommandLine.Option;

/** The options that say how a report looks and where it goes, and the one way there. */
final class ReportOutput {

  /** Writes a report. */
  @FunctionalInterface
  interface Content {

    /**
     * @param writer stays open
     * @param width characters in a line of text
     * @param colour of text
     */
    void writeTo(Writer writer, int width, Colour colour) throws IOException;
  }

  @Option(
      names = {"-f", "--format"},
      paramLabel = "text|json|html|csv",
      defaultValue = "text",
      description = {
        "text for people (the default); json for programs: one object a line, field names with units;",
        "html: one page with a chart of each run, for a screen, a phone and paper; csv: one table for a"
            + " spreadsheet."
      })
  private ReportFormat format;

  @Option(
      names = {"-o", "--output", "--out"},
      paramLabel = "FILE",
      description = "Write here instead of on standard output.")
  private Path file;

  @Option(names = "--force", description = "Replace a file that is there already.")
  private boolean force;

  @Option(
      names = "--language",
      paramLabel = "en|es",
      description = "Of html and csv; if not given, screen.language of the settings.")
  private String language;

  ReportFormat format() {
    return format;
  }

  /**
   * The language asked for, or the usual one.
   *
   * @return null if there is no language of that code
   */
  Language language(Language usual) {
    if (language == null) {
      return usual;
    }
    for (Language one : Language.values()) {
      if (one.code().equals(language)) {
        return one;
      }
    }
    return null;
  }

  /** What was typed as a language. */
  String languageCode() {
    return language;
  }

  /** Writes to the file, or to the terminal. */
  void write(Content content, Terminal terminal) throws IOException {
    if (file == null) {
      PrintWriter writer = terminal.writer();
      content.writeTo(writer, terminal.width(), terminal.colour());
      writer.flush();
      return;
    }
    StringWriter text = new StringWriter();
    content.writeTo(text, TextReport.LEAST_WIDTH, Colour.PLAIN);
    if (force) {
      WholeFile.replace(file, text.toString());
    } else {
      WholeFile.create(file, text.toString());
    }
    terminal.err().println("boothlamp: the report is in " + file);
  }
}
