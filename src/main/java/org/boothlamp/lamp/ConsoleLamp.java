package org.boothlamp.lamp;

import java.io.IOException;
import java.io.PrintStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.Colour;

/**
 * The lamp as lines of text, one at each change: time, the three lights by place and letter, word,
 * meaning. Colour may be added but never says anything alone.
 *
 * <pre>
 *   14:03:27.412  [..G]  green     inside the window
 *   14:03:31.907  [R..]  red       outside the window
 * </pre>
 *
 * <p>Confined to one thread.
 */
public final class ConsoleLamp implements LampOutput {

  private static final String RESET = "\u001B[0m";

  private final PrintStream stream;
  private final WallClock clock;
  private final Colour colour;
  private final DateTimeFormatter time;

  /** What the last line said; null before the first. */
  private Signal printed;

  /**
   * A lamp on a stream, which stays open when the lamp is closed.
   *
   * @param stream where to print
   * @param clock time of day
   * @param zone where the booth is
   * @param colour whether the stream understands ANSI colours
   */
  public ConsoleLamp(PrintStream stream, WallClock clock, ZoneId zone, Colour colour) {
    this.stream = stream;
    this.clock = clock;
    this.colour = colour;
    time = DateTimeFormatter.ofPattern("HH:mm:ss.SSS", Locale.ROOT).withZone(zone);
  }

  @Override
  public String name() {
    return "console";
  }

  @Override
  public void apply(Signal signal, int lights, long samplesNanos) throws IOException {
    if (signal == printed) {
      return;
    }
    stream.println(line(signal));
    if (stream.checkError()) {
      throw new IOException("the console takes no more lines");
    }
    printed = signal;
  }

  private String line(Signal signal) {
    String words =
        String.format(
            Locale.ROOT, "[%s]  %-8s  %s", symbol(signal), signal.word(), meaning(signal));
    return time.format(Instant.ofEpochMilli(clock.epochMillis())) + "  " + coloured(signal, words);
  }

  private String coloured(Signal signal, String words) {
    return colour == Colour.ANSI ? ansi(signal) + words + RESET : words;
  }

  /** The lights from top to bottom; a small letter blinks. */
  private static String symbol(Signal signal) {
    return switch (signal) {
      case DARK -> "...";
      case IDLE -> "..g";
      case SETTLING -> ".AG";
      case GREEN -> "..G";
      case AMBER -> ".A.";
      case RED -> "R..";
      case FAULT -> "ra.";
    };
  }

  private static String meaning(Signal signal) {
    return switch (signal) {
      case DARK -> "the monitor is not running";
      case IDLE -> "no arc";
      case SETTLING -> "arc seen, not judged yet";
      case GREEN -> "inside the window";
      case AMBER -> "inside, near a limit";
      case RED -> "outside the window";
      case FAULT -> "do not trust the lamp";
    };
  }

  private static String ansi(Signal signal) {
    return switch (signal) {
      case DARK -> "\u001B[2m";
      case IDLE, GREEN -> "\u001B[32m";
      case SETTLING, AMBER -> "\u001B[33m";
      case RED, FAULT -> "\u001B[31m";
    };
  }

  @Override
  public void close() throws IOException {
    apply(Signal.DARK, 0, 0);
  }
}
