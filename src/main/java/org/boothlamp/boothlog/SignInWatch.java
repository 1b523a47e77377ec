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
      "SELECT " + SignIn.COLUMNS + " FROM sign_in WHERE id > ? ORDER BY id";

  private final LogClocks clocks;
  private final Consumer<SignIn> onSignIn;
  private long nextPollNanos;
  private boolean started;
  private long lastId;
  private long failures;

  SignInWatch(LogClocks clocks, Consumer<SignIn> onSignIn) {
    this.clocks = clocks;
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
        if (latest.wallMillis() >= clocks.startOfTodayMillis()) {
          today.add(latest);
        }
      }
    }
    started = true;
    return today;
  }

  private List<SignIn> newer(LogConnection log) throws SQLException {
    List<SignIn> signIns = new ArrayList<>();
    try (Columns row = log.bind(NEWER).whole(lastId).rows()) {
      while (row.next()) {
        signIns.add(SignIn.of(row));
      }
    }
    return signIns;
  }

  private void tell(SignIn signIn) {
    lastId = signIn.id();
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
