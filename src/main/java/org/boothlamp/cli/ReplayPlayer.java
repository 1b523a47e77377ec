package org.boothlamp.cli;

import java.io.PrintStream;
import java.util.Locale;
import org.boothlamp.acquisition.Pause;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.report.ReplayScreen;
import org.boothlamp.report.WeldReplay;

/**
 * Shows a replay on a terminal: playing, step by step, or as lines. Frames are due at moments
 * counted from the start, so that drawing slows nothing down; a terminal that is too slow is shown
 * fewer of them. Confined to one thread.
 */
final class ReplayPlayer {

  /** Erase in display, cursor position, erase in line (ECMA-48). */
  private static final String CLEAR = "\u001B[2J\u001B[H";

  private static final String HOME = "\u001B[H";
  private static final String REST_OF_LINE = "\u001B[K\n";
  private static final String REST_OF_SCREEN = "\u001B[J";

  private static final double NANOS_PER_SECOND = 1e9;
  private static final long LONGEST_WAIT_NANOS = 50_000_000L;
  private static final long SHORTEST_WAIT_NANOS = 1_000_000L;

  /** Without a terminal a line stands for so many frames: half a second. */
  private static final int FRAMES_A_LINE = 10;

  private final ReplayScreen screen;
  private final int frames;
  private final Terminal terminal;
  private final PrintStream out;
  private final NanoClock clock;
  private final Pause pause;
  private long playedNanos;
  private long lastNanos;
  private boolean paused;

  ReplayPlayer(ReplayScreen screen, int frames, Terminal terminal, NanoClock clock, Pause pause) {
    this.screen = screen;
    this.frames = frames;
    this.terminal = terminal;
    this.clock = clock;
    this.pause = pause;
    out = terminal.out();
  }

  /** As lines, without waiting. */
  void print() {
    out.print(screen.head());
    out.print(screen.lineNames());
    for (int frame = 0; frame < frames; frame++) {
      if (frame % FRAMES_A_LINE == 0 || frame == frames - 1 || screen.isNews(frame)) {
        out.print(screen.line(frame));
      }
    }
  }

  /** As a moving picture. */
  void play(double speed) {
    TypedLines typed = new TypedLines(terminal.in());
    String note = "speed " + Wording.number(speed) + "; Enter holds and goes on, q ends";
    out.print(CLEAR);
    lastNanos = clock.nanoTime();
    int shown = -1;
    boolean asked = false;
    while (!asked && shown < frames - 1) {
      int due = frameDue(speed);
      if (due > shown) {
        shown = due;
        draw(shown, note);
      }
      String line = typed.poll();
      if (line != null) {
        asked = line.strip().equalsIgnoreCase("q");
        paused = !paused;
        draw(shown, paused ? "held; Enter goes on, q ends" : note);
      }
      pause.pauseNanos(waitNanos(shown, speed));
    }
  }

  /** The frame to be shown now; time that is held does not count. */
  private int frameDue(double speed) {
    long now = clock.nanoTime();
    playedNanos += paused ? 0 : now - lastNanos;
    lastNanos = now;
    double seconds = playedNanos / NANOS_PER_SECOND * speed;
    return (int) Math.min(frames - 1, seconds / WeldReplay.FRAME_SECONDS);
  }

  private long waitNanos(int shown, double speed) {
    double dueNanos = (shown + 1) * WeldReplay.FRAME_SECONDS * NANOS_PER_SECOND / speed;
    double left = Math.min(LONGEST_WAIT_NANOS, dueNanos - playedNanos);
    return Math.max(SHORTEST_WAIT_NANOS, (long) left);
  }

  private void draw(int frame, String note) {
    String picture = screen.picture(frame, note);
    out.print(HOME + picture.replace("\n", REST_OF_LINE) + REST_OF_SCREEN);
    out.flush();
  }

  /** One moment for each line that is typed, until the lines or the run end. */
  void step() {
    TypedLines typed = new TypedLines(terminal.in());
    if (terminal.canRedraw()) {
      out.print(CLEAR);
    } else {
      out.print(screen.head());
      out.print(screen.lineNames());
    }
    int frame = 0;
    String line = "";
    while (line != null && !line.equals("q")) {
      showStep(frame);
      line = typed.next();
      frame = line == null ? frame : next(frame, line.strip().toLowerCase(Locale.ROOT));
    }
  }

  private void showStep(int frame) {
    if (terminal.canRedraw()) {
      draw(frame, "Enter on, b back, n next, p before, a number: that second, q ends");
    } else {
      out.print(screen.line(frame));
    }
  }

  private int next(int frame, String asked) {
    int to =
        switch (asked) {
          case "" -> frame + 1;
          case "b" -> frame - 1;
          case "n" -> news(frame, 1);
          case "p" -> news(frame, -1);
          default -> frameOf(asked, frame);
        };
    return Math.max(0, Math.min(frames - 1, to));
  }

  private int news(int from, int step) {
    int frame = from + step;
    while (frame > 0 && frame < frames - 1 && !screen.isNews(frame)) {
      frame += step;
    }
    return frame;
  }

  private static int frameOf(String seconds, int otherwise) {
    try {
      return (int) Math.round(Double.parseDouble(seconds) / WeldReplay.FRAME_SECONDS);
    } catch (NumberFormatException noNumber) {
      return otherwise;
    }
  }
}
