package org.boothlamp.testing.board;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;

/**
 * Watches the pins from outside some 150 times a second, and the console for the marks that the
 * board sets, until the board says that it has ended. Writes {@code pins.csv}, a row at each change
 * of a pin, and {@code marks.csv}. A program to run by hand.
 */
public final class PinWatch {

  private static final long PAUSE_NANOS = 4_000_000;
  private static final String MARK = "MARK ";
  private static final String END = "end";

  private final long startNanos = System.nanoTime();
  private final Path console;
  private final PrintWriter pins;
  private final PrintWriter marks;
  private int charsRead;
  private boolean ended;

  private PinWatch(Path console, PrintWriter pins, PrintWriter marks) {
    this.console = console;
    this.pins = pins;
    this.marks = marks;
  }

  /**
   * Watches one run of the board.
   *
   * @param args folder with {@code monitor.sock} and {@code console.log}, then the seconds after
   *     which the board is given up
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    try (BoardMonitor monitor = BoardMonitor.open(folder.resolve("monitor.sock"));
        PrintWriter pins = new PrintWriter(Files.newBufferedWriter(folder.resolve("pins.csv")));
        PrintWriter marks = new PrintWriter(Files.newBufferedWriter(folder.resolve("marks.csv")))) {
      PinWatch watch = new PinWatch(folder.resolve("console.log"), pins, marks);
      watch.watch(monitor, Double.parseDouble(args[1]));
    }
  }

  private void watch(BoardMonitor monitor, double mostSeconds) throws IOException {
    PinSample last = null;
    long samples = 0;
    while (!ended) {
      PinSample sample = monitor.sample(seconds());
      samples++;
      if (last == null || last.levels() != sample.levels() || last.driven() != sample.driven()) {
        pins.println(sample.toCsv());
        last = sample;
      }
      readMarks(sample.seconds());
      if (seconds() > mostSeconds) {
        throw new IOException(
            "the board had not ended after "
                + mostSeconds
                + " s; its console says how far it came");
      }
      LockSupport.parkNanos(PAUSE_NANOS);
    }
    PinSample end = monitor.sample(seconds());
    pins.println(end.toCsv());
    System.out.printf(Locale.ROOT, "%.0f looks at the pins a second%n", samples / end.seconds());
  }

  private double seconds() {
    return (System.nanoTime() - startNanos) / 1e9;
  }

  private void readMarks(double seconds) throws IOException {
    String text = Files.readString(console, StandardCharsets.ISO_8859_1);
    int end = text.lastIndexOf('\n') + 1;
    if (end <= charsRead) {
      return;
    }
    text.substring(charsRead, end)
        .lines()
        .filter(line -> line.startsWith(MARK))
        .map(line -> line.substring(MARK.length()).strip())
        .forEach(mark -> mark(seconds, mark));
    charsRead = end;
  }

  private void mark(double seconds, String mark) {
    marks.printf(Locale.ROOT, "%.4f,%s%n", seconds, mark);
    ended |= mark.equals(END);
  }
}
