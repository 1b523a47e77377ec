package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boothlamp.monitor.EventKind;
import org.tinylog.Logger;

/**
 * Gets the log's file ready for the writer, whatever state it is in.
 *
 * <pre>
 *   opens? --no--&gt; tried again every second, rows wait
 *     | yes
 *   quick check --damaged--&gt; set aside, new file with higher numbers --&gt; rows taken over bit by bit
 *     | sound, or out of time: then it goes on beside the writer
 *   ready
 * </pre>
 *
 * <p>Confined to one thread.
 */
final class LogRescue implements AutoCloseable {

  private static final long RETRY_NANOS = 1_000_000_000L;

  /** The monitor has 5 s to start; a log that takes longer to look at is written meanwhile. */
  private static final long CHECK_NANOS = 2_000_000_000L;

  /** How long a bit of salvage may keep a finished segment waiting. */
  private static final long SALVAGE_NANOS = 100_000_000L;

  private final BoothLog log;
  private final LogStart start;
  private final LogClocks clocks;
  private final LogBatch batch;
  private final EntrySorter sorter;
  private final BoothLogCounters counters;
  private final BootRow bootRow;
  private final Deque<Salvage> salvages = new ArrayDeque<>();
  private BackgroundCheck backgroundCheck;
  private boolean ready;
  private long nextTryNanos;
  private Moment salvageBegun;

  LogRescue(
      BoothLog log,
      LogStart start,
      LogClocks clocks,
      LogBatch batch,
      EntrySorter sorter,
      BoothLogCounters counters,
      BootRow bootRow) {
    this.log = log;
    this.start = start;
    this.clocks = clocks;
    this.batch = batch;
    this.sorter = sorter;
    this.counters = counters;
    this.bootRow = bootRow;
    nextTryNanos = now();
  }

  private long now() {
    return clocks.nano().nanoTime();
  }

  /** True if rows can be written now; tries to bring that about, once a second at most. */
  boolean isReady() {
    if (ready && backgroundCheck != null && backgroundCheck.foundDamage()) {
      onDamage("damage was found while it was looked at");
    }
    if (!ready && now() - nextTryNanos >= 0) {
      getReady();
    }
    return ready;
  }

  private void getReady() {
    try {
      openSound();
      takeUp();
      ready = true;
      counters.trouble = null;
    } catch (SQLException | IOException | RuntimeException failure) {
      retryAfter(failure);
    }
  }

  private void retryAfter(Exception failure) {
    if (counters.trouble == null) {
      Logger.warn("booth log {}: not to be used now, trying again: {}", log.path(), failure);
    }
    counters.trouble = failure.getMessage();
    log.dropConnection(failure);
    nextTryNanos = now() + RETRY_NANOS;
  }

  private void openSound() throws SQLException, IOException {
    if (log.isSuspect()) {
      setAside("it cannot be opened as a database");
    }
    try {
      look(log.connection());
    } catch (BoothLogException failure) {
      if (!SqliteCodes.isDamage(failure)) {
        throw failure;
      }
      setAside(failure.getCause().getMessage());
    }
  }

  private void look(LogConnection connection) throws SQLException, IOException {
    if (backgroundCheck != null) {
      return;
    }
    long endNanos = now() + CHECK_NANOS;
    switch (LogCheck.run(connection, () -> now() - endNanos > 0)) {
      case DAMAGED -> setAside("its pages do not hang together");
      case UNFINISHED -> backgroundCheck = BackgroundCheck.begin(log.path());
      case SOUND -> Logger.debug("booth log {}: sound", log.path());
    }
  }

  private void setAside(String why) throws IOException {
    Path aside =
        log.setAside(LocalDateTime.ofInstant(Instant.ofEpochMilli(wallMillis()), clocks.zone()));
    String name = aside.getFileName().toString();
    Logger.warn("booth log {}: damaged ({}); set aside as {}", log.path(), why, name);
    sorter.addEvent(EventKind.LOG_DAMAGED, clocks.now(), 0, 0, "set aside as " + name);
    salvageBegun = clocks.now();
  }

  private long wallMillis() {
    return clocks.wall().epochMillis();
  }

  /** Numbers first, so that no new row takes one that an old row has. */
  private void takeUp() throws SQLException, IOException {
    LogConnection connection = log.connection();
    openSalvages(connection);
    if (!start.isSettled()) {
      start.settle(connection);
    }
    List<LogRow> first = new ArrayList<>(List.of(bootRow));
    first.addAll(LeftOpenSegment.in(connection, start));
    batch.addInFront(first);
  }

  private void openSalvages(LogConnection connection) throws SQLException, IOException {
    Set<String> done = salvaged(connection);
    closeSalvages();
    for (Path aside : SetAside.of(log.path())) {
      if (!done.contains(aside.getFileName().toString())) {
        openSalvage(aside, connection);
      }
    }
  }

  private void openSalvage(Path aside, LogConnection connection) throws SQLException {
    try {
      Salvage salvage = Salvage.of(aside, connection);
      Map<String, Long> taken = salvage.taken();
      connection.execute("BEGIN IMMEDIATE");
      LogNumbers.keepFree(connection, taken);
      takeIdentity(salvage.identity(), connection);
      if (start.isSettled()) {
        start.dealt().keepFree(connection);
      }
      connection.execute("COMMIT");
      salvages.add(salvage);
      salvage.beginToLook();
      salvageBegun = salvageBegun == null ? clocks.now() : salvageBegun;
    } catch (IOException | RuntimeException unreadable) {
      // No file, however broken, may keep the monitor from its log.
      Logger.error(unreadable, "booth log {}: cannot be read, nothing is taken over", aside);
    }
  }

  /** The rows keep their numbers; where they have been sent on, they must be known again. */
  private static void takeIdentity(String identity, LogConnection connection) throws SQLException {
    if (identity != null) {
      connection.bind("UPDATE log_identity SET log = ?").text(identity).run();
    }
  }

  private static Set<String> salvaged(LogConnection connection) throws SQLException {
    Set<String> files = new HashSet<>();
    try (Columns row = connection.bind("SELECT file FROM salvage").rows()) {
      while (row.next()) {
        files.add(row.text());
      }
    }
    return files;
  }

  /**
   * A commit has failed: if the file is the reason, it is replaced, and the rows go into another.
   */
  void onFailedCommit(Exception failure) {
    if (SqliteCodes.isDamage(failure)) {
      onDamage(failure.getMessage());
    }
  }

  private void onDamage(String why) {
    ready = false;
    endBackgroundCheck();
    try {
      setAside(why);
    } catch (IOException failure) {
      retryAfter(failure);
    }
  }

  private void endBackgroundCheck() {
    if (backgroundCheck != null) {
      backgroundCheck.end();
      backgroundCheck = null;
    }
  }

  /** Takes a few rows over from a damaged file, if there is one, between two runs. */
  void salvageSome() {
    Salvage salvage = salvages.peek();
    if (salvage == null || sorter.isSegmentRunning() || now() - nextTryNanos < 0) {
      return;
    }
    try {
      if (!salvage.step(log.connection(), clocks.nano(), SALVAGE_NANOS)) {
        finish(salvage);
      }
    } catch (SQLException refused) {
      nextTryNanos = now() + RETRY_NANOS;
      onFailedCommit(refused);
    } catch (IOException | RuntimeException failure) {
      Logger.error(failure, "booth log {}: given up until the next start", salvage.path());
      salvages.remove(salvage);
      close(salvage);
    }
  }

  private void finish(Salvage salvage) throws SQLException {
    SalvageRow row =
        new SalvageRow(
            salvage.path().getFileName().toString(),
            salvage.savedRows(),
            salvage.lostPages(),
            salvage.lostRows());
    LeftOpenSegment.in(log.connection(), start).forEach(batch::add);
    batch.add(row);
    double seconds = salvageBegun.secondsUntil(clocks.now());
    sorter.addEvent(
        EventKind.LOG_SALVAGED, salvageBegun, seconds, salvage.lostPages(), row.words());
    Logger.warn("booth log {}: {}", log.path(), row.words());
    salvages.remove(salvage);
    close(salvage);
  }

  private void closeSalvages() {
    salvages.forEach(LogRescue::close);
    salvages.clear();
  }

  private static void close(Salvage salvage) {
    try {
      salvage.close();
    } catch (IOException failure) {
      Logger.warn(failure, "booth log {}: not closed", salvage.path());
    }
  }

  /** True while rows of a damaged file are still to be taken over. */
  boolean isSalvaging() {
    return !salvages.isEmpty();
  }

  @Override
  public void close() {
    endBackgroundCheck();
    closeSalvages();
  }
}
