package org.boothlamp.cli;

import picocli.CommandLine.Option;

/** The option that says for whom an answer is. */
final class FormatOption {

  @Option(
      names = {"-f", "--format"},
      paramLabel = "text|json",
      defaultValue = "text",
      description =
          "text for people (the default), or json for programs: one object a line, field names with"
              + " units.")
  private OutputFormat format;

  boolean isJson() {
    return format == OutputFormat.JSON;
  }
}
