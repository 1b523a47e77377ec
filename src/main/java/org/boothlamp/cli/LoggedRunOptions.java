package org.boothlamp.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** What replay is told about a run of the booth log. */
final class LoggedRunOptions {

  @Option(
      names = "--segment",
      required = true,
      paramLabel = "ID",
      description = "This run again; its number is the id in report --format json.")
  long segment;

  @Option(
      names = "--beside",
      paramLabel = "ID",
      description = "Another run of the same log beside it, start laid over start.")
  Long beside;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description = "Read this log file instead of the one in the settings.")
  Path log;

  @Option(
      names = "--speed",
      paramLabel = "X",
      description =
          "0.01 to 100 times as fast as it was; 0.25 is slow. Default: 1. Without a terminal nothing"
              + " waits.")
  Double speed;

  @Option(
      names = "--step",
      description =
          "Moment by moment: Enter goes on by 0.05 s, b back, n to what happens next, p to what"
              + " happened before, a number to that second, q ends.")
  boolean step;
}
