package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.tinylog.Logger;

/**
 * Notices sign-ins that other processes wrote. Confined to one thread.
 *
 * <p>At its first look it tells of the latest sign-in of today, so that a monitor that was
 * restarted knows who welds; yesterday's trainee has gone home.
 */
final class SignInWatch {

  private static final long POLL_NANOS = 250_000_000L;

  private static final String LATEST =
      "SELECT " + SignIn.COLUMNS + " FROM sign_in ORDER BY id DESC LIMIT 1";
  private static final String NEWER =
      "SELECT " + SignIn.COLUMNS + ", machine_boot FROM sign_in WHERE id > ? ORDER BY id";

  /** A sign-in of the last moments of yesterday is still news. */
  private static final long STILL_NEWS_MILLIS = 600_000;

  private final LogClocks clocks;
  private final LogStart start;
  private final String machineBoot;
  private final Consumer<SignIn> onSignIn;
  private long nextPollNanos;
  private boolean started;
  private long lastId;
  private long failures;

  SignInWatch(LogClocks clocks, LogStart start, String machineBoot, Consumer<SignIn> onSignIn) {
    this.clocks = clocks;
    this.start = start;
    this.machineBoot = machineBoot;
    this.onSignIn = onSignIn;
    nextPollNanos = clocks.nano().nanoTime();
  }

  /** Looks for new rows, four times a second at most. */
  void poll(BoothLog log) {
    long now = clocks.nano().nanoTime();
    if (now - nextPollNanos < 0) {
      return;
    }
    nextPollNanos = now + POLL_NANOS;
    try {
      read(log.connection()).forEach(this::tell);
      failures = 0;
    } catch (SQLException | RuntimeException failure) {
      onFailure(log, failure);
    }
  }

  private List<SignIn> read(LogConnection log) throws SQLException {
    if (started) {
      return newer(log);
    }
    List<SignIn> today = new ArrayList<>();
    try (Columns row = log.bind(LATEST).rows()) {
      if (row.next()) {
        SignIn latest = SignIn.of(row);
        lastId = latest.id();
        if (isOfToday(latest, log)) {
          today.add(latest);
        }
      }
    }
    started = true;
    return today;
  }

  /**
   * While nobody knows what day it is, only what was signed in since the machine was switched on is
   * sure to be of today.
   */
  private boolean isOfToday(SignIn latest, LogConnection log) throws SQLException {
    if (start.isClockTrusted()) {
      return latest.wallMillis() >= clocks.startOfTodayMillis();
    }
    try (Columns row =
        log.bind("SELECT machine_boot FROM sign_in WHERE id = ?").whole(latest.id()).rows()) {
      return row.next() && machineBoot != null && machineBoot.equals(row.text());
    }
  }

  /** Rows of other days are no news: they were saved from a damaged file. */
  private List<SignIn> newer(LogConnection log) throws SQLException {
    List<SignIn> signIns = new ArrayList<>();
    long newest = lastId;
    try (Columns row = log.bind(NEWER).whole(lastId).rows()) {
      while (row.next()) {
        SignIn signIn = SignIn.of(row);
        newest = signIn.id();
        boolean sinceSwitchedOn = machineBoot != null && machineBoot.equals(row.text());
        if (sinceSwitchedOn || isRecent(signIn)) {
          signIns.add(signIn);
        }
      }
    }
    lastId = newest;
    return signIns;
  }

  private boolean isRecent(SignIn signIn) {
    return signIn.wallMillis() >= clocks.startOfTodayMillis() - STILL_NEWS_MILLIS;
  }

  private void tell(SignIn signIn) {
    onSignIn.accept(signIn);
  }

  private void onFailure(BoothLog log, Exception failure) {
    if (failures++ == 0) {
      Logger.warn(failure, "booth log {}: sign-ins cannot be followed, trying again", log.path());
    }
    if (failure instanceof SQLException known && !SqliteCodes.passesByItself(known)) {
      log.dropConnection(failure);
    }
  }
}
