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

  @Option(
      names = "--zoom",
      paramLabel = "FROM..TO",
      description =
          "Instead: these seconds of the run's raw recording, down to single pairs, with each short"
              + " circuit.")
  String zoom;

  @Option(
      names = "--sound",
      paramLabel = "NAME.wav",
      description =
          "Instead: write the arc's sound, its volts, of the run or of the seconds of --zoom.")
  Path sound;

  boolean wantsRaw() {
    return zoom != null || sound != null;
  }

  /**
   * The seconds asked for, from and until.
   *
   * @throws IllegalArgumentException if they cannot be read
   */
  double[] zoomSeconds() {
    String[] parts = zoom.split("[.][.]", -1);
    double[] seconds = {Double.NaN, Double.NaN};
    for (int k = 0; k < 2 && parts.length == 2; k++) {
      seconds[k] = number(parts[k]);
    }
    if (!(seconds[0] < seconds[1])) {
      throw new IllegalArgumentException(
          "--zoom must be two moments in seconds such as 3.2..3.4, but is " + zoom);
    }
    return seconds;
  }

  private static double number(String text) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException noNumber) {
      return Double.NaN;
    }
  }
}
