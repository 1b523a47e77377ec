package org.boothlamp.cli;

import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.boothlamp.report.Colour;

/**
 * Where a command writes and reads, and what that place can show. Immutable.
 *
 * @param out answers
 * @param err everything else
 * @param interactive true if a person watches {@code out} on a terminal
 * @param width columns of the terminal, at least 80
 * @param colour whether answers may be coloured
 * @param in what a person types
 */
public record Terminal(
    PrintStream out,
    PrintStream err,
    boolean interactive,
    int width,
    Colour colour,
    InputStream in) {

  private static final int LEAST_WIDTH = 80;
  private static final int MOST_WIDTH = 140;

  /** A terminal at which nobody types. */
  public Terminal(PrintStream out, PrintStream err, boolean interactive, int width, Colour colour) {
    this(out, err, interactive, width, colour, InputStream.nullInputStream());
  }

  /**
   * This process's own. The launcher says whether standard output is a terminal, and how wide, in
   * the properties {@code boothlamp.terminal} and {@code boothlamp.columns}: Java cannot tell the
   * same way in every version. Without the launcher it is taken for a file.
   */
  public static Terminal system() {
    boolean interactive = Boolean.getBoolean("boothlamp.terminal");
    return new Terminal(
        new PrintStream(System.out, true, StandardCharsets.UTF_8),
        new PrintStream(System.err, true, StandardCharsets.UTF_8),
        interactive,
        Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, Integer.getInteger("boothlamp.columns", 0))),
        colour(interactive, System.getenv()),
        System.in);
  }

  /** Colour only on a terminal that has some, and never against NO_COLOR (any value but empty). */
  static Colour colour(boolean interactive, Map<String, String> environment) {
    boolean wanted =
        interactive
            && environment.getOrDefault("NO_COLOR", "").isEmpty()
            && !"dumb".equals(environment.get("TERM"));
    return wanted ? Colour.ANSI : Colour.PLAIN;
  }

  /** True if what was written can be written over: on a terminal that knows escape sequences. */
  boolean canRedraw() {
    return interactive && !"dumb".equals(System.getenv("TERM"));
  }

  /** A writer on {@link #out}; whoever gets it flushes it. */
  PrintWriter writer() {
    return new PrintWriter(out, false, StandardCharsets.UTF_8);
  }
}
