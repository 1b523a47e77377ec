package org.boothlamp.app;

import java.util.function.Function;
import java.util.function.Supplier;
import org.boothlamp.acquisition.BadgeReader;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.settings.SettingsException;
import org.tinylog.Logger;

/**
 * Signs trainees in by their badges, on a thread of its own. The badge of whoever is signed in
 * changes nothing: nobody is signed out by a badge that was read twice, and whoever comes back and
 * makes sure keeps the procedure the instructor chose. Signing out takes another badge, one made
 * for it, or the command.
 */
final class BadgeDesk implements Worker {

  /** What the booth does for the desk; from the desk's thread. */
  interface Booth {

    /** Who is signed in; empty if nobody is. */
    String signedIn();

    /**
     * Writes a sign-in into the log.
     *
     * @param trainee trainee code; empty signs out
     * @throws BoothLogException if the log cannot be written now
     */
    void signIn(String trainee);

    /** Says no on the lamp. */
    void refuse();

    /** An event as of now. */
    void note(EventKind kind, String detail);

    /** An event that begins now. */
    void begin(EventKind kind, String detail);

    /** The end of it. */
    void end(EventKind kind);
  }

  private static final long WAIT_NANOS = 100_000_000L;

  /** A badge that lies on the reader is one event, not hundreds. */
  private static final long SAME_NANOS = 10_000_000_000L;

  private static final long RETRY_NANOS = 1_000_000_000L;

  /** So much of a badge's code may be written down: enough to tell two badges apart. */
  private static final int SHOWN = 2;

  private static final int LEAST_HIDDEN = 4;

  private final BadgeReader reader;
  private final Supplier<Function<String, String>> table;
  private final Booth booth;
  private final NanoClock clock;
  private boolean lost;
  private String refusedCode = "";
  private long refusedNanos;

  /** Null if nobody waits for the log. */
  private String waiting;

  private long retryNanos;

  /**
   * A desk with a reader, which it closes.
   *
   * @param table read for every badge, so that a changed one counts: from a badge's code to the
   *     trainee, to nothing if it signs out, or null if the badge is not known; may throw
   *     SettingsException
   */
  BadgeDesk(
      BadgeReader reader, Supplier<Function<String, String>> table, Booth booth, NanoClock clock) {
    this.reader = reader;
    this.table = table;
    this.booth = booth;
    this.clock = clock;
  }

  @Override
  public String roleName() {
    return "badge";
  }

  @Override
  public boolean step() {
    String code = reader.next(WAIT_NANOS);
    watchReader();
    if (code != null) {
      take(code);
    }
    if (waiting != null && clock.nanoTime() - retryNanos >= 0) {
      signIn();
    }
    return true;
  }

  private void watchReader() {
    SourceException failure = reader.failure();
    if (failure != null && !lost) {
      lost = true;
      booth.begin(EventKind.BADGE_READER_LOST, failure.what());
    } else if (failure == null && lost) {
      lost = false;
      booth.end(EventKind.BADGE_READER_LOST);
    }
  }

  private void take(String code) {
    String trainee;
    try {
      trainee = table.get().apply(code);
    } catch (SettingsException unreadable) {
      Logger.warn("badges cannot be told: {}", unreadable.getMessage());
      refuse(code, "the table of badges cannot be read: " + unreadable.problems().get(0).rule());
      return;
    }
    if (trainee == null) {
      refuse(code, shortened(code));
      return;
    }
    refusedCode = "";
    if (waiting != null || !trainee.equals(booth.signedIn())) {
      waiting = trainee;
      retryNanos = clock.nanoTime();
    }
  }

  private void refuse(String code, String detail) {
    booth.refuse();
    long now = clock.nanoTime();
    if (!code.equals(refusedCode) || now - refusedNanos >= SAME_NANOS) {
      refusedCode = code;
      refusedNanos = now;
      Logger.warn("unknown badge: {}", detail);
      booth.note(EventKind.UNKNOWN_BADGE, detail);
    }
  }

  /** Never a whole code: it would open whatever else the badge opens. */
  static String shortened(String code) {
    int length = code.length();
    String size = length + (length == 1 ? " character" : " characters");
    return length < SHOWN + LEAST_HIDDEN
        ? size
        : size + ", ends in " + code.substring(length - SHOWN);
  }

  private void signIn() {
    try {
      booth.signIn(waiting);
      waiting = null;
    } catch (BoothLogException later) {
      Logger.warn("a badge waits for the log: {}", later.getMessage());
      retryNanos = clock.nanoTime() + RETRY_NANOS;
    }
  }

  @Override
  public void close() {
    reader.close();
    if (lost) {
      booth.end(EventKind.BADGE_READER_LOST);
    }
  }
}
