package org.boothlamp.cli;

import java.util.Locale;

/** How far a long command is, in one line that a terminal overwrites; silent anywhere else. */
final class ProgressBar {

  private static final int CELLS = 30;

  private final Terminal terminal;
  private final long total;
  private long done;

  ProgressBar(Terminal terminal, long total) {
    this.terminal = terminal;
    this.total = total;
  }

  /** So many more are done. */
  void add(long some) {
    done += some;
    if (terminal.interactive()) {
      terminal.out().print("\r" + line());
      terminal.out().flush();
    }
  }

  private String line() {
    // More may have come in meanwhile.
    long all = Math.max(total, done);
    int full = (int) (CELLS * done / all);
    return String.format(
        Locale.ROOT,
        "[%s%s] %,d of %,d rows",
        "#".repeat(full),
        " ".repeat(CELLS - full),
        done,
        all);
  }

  /** Leaves the line to what follows. */
  void end() {
    if (terminal.interactive() && done > 0) {
      terminal.out().println();
    }
  }
}
