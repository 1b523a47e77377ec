package org.boothlamp.boothlog;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.LocalDateTime;
import org.boothlamp.calibration.CalibrationHistory;
import org.tinylog.Logger;

/**
 * The log opened for the one process that writes segments to it. A lock file beside the log keeps a
 * second monitor out; the system gives the lock back however the process ends.
 *
 * <p>Opened at start by whoever wires the monitor, so that a log that cannot be used is said before
 * anything runs; from then on used and closed by {@link BoothLogWriter}, on its thread.
 */
public final class BoothLog implements AutoCloseable {

  /** Usual name of the file. */
  public static final String FILE_NAME = "booth.db";

  /** Longest wait for a short command's transaction: the writer must soon drain its queue again. */
  private static final int BUSY_MILLIS = 250;

  private final Path path;
  private FileChannel lockFile;
  private LogConnection connection;
  private boolean suspect;

  private BoothLog(Path path) {
    this.path = path;
  }

  /**
   * Opens the log of this booth; makes the file, and its folder if only that is missing.
   *
   * @throws BoothLogException if the folder is missing or read-only, the file is not a booth log,
   *     was written by a newer version, or is locked by another process
   */
  public static BoothLog open(Path path) {
    BoothLog log = new BoothLog(path);
    log.connection = LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS);
    try {
      log.lockFile = lock(path);
      log.connection.execute("PRAGMA busy_timeout = " + BUSY_MILLIS);
      return log;
    } catch (SQLException failure) {
      closeAfter(log.connection, failure);
      throw LogFile.explain(path, failure);
    } catch (RuntimeException failure) {
      closeAfter(log.connection, failure);
      throw failure;
    }
  }

  /**
   * Keeps monitors out while something else uses the booth's source.
   *
   * @return gives the lock back when it is closed
   * @throws BoothLogException if a monitor runs, or the lock file cannot be written
   */
  public static Closeable keepMonitorsOut(Path path) {
    LogFile.prepareFolder(path);
    return lock(path);
  }

  /**
   * Opens the log for a monitor that is to run in any case. A file that is damaged, locked or not
   * to be written now is no reason to stay dark: it is tried again, or set aside, by {@link
   * BoothLogWriter} on its thread.
   *
   * @throws BoothLogException if the path is wrong, another monitor writes there, or the file
   *     belongs to another program or a newer version: what a person must put right
   */
  public static BoothLog openPatiently(Path path) {
    BoothLog log = new BoothLog(path);
    try {
      LogFile.prepareFolder(path);
      SetAside.finish(path);
      log.lockFile = lock(path);
      log.connection = LogFile.openForWriting(path, BUSY_MILLIS);
    } catch (BoothLogException failure) {
      if (failure.getCause() == null) {
        log.close();
        throw failure;
      }
      log.suspect = SqliteCodes.isDamage(failure);
      Logger.warn("{}; the monitor starts all the same and tries again", failure.getMessage());
    }
    return log;
  }

  private static void closeAfter(LogConnection connection, Exception failure) {
    try {
      connection.close();
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  private static FileChannel lock(Path path) {
    Path lockPath = path.resolveSibling(path.getFileName() + ".lock");
    try {
      FileChannel channel =
          FileChannel.open(lockPath, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!tryLock(channel)) {
        channel.close();
        throw new BoothLogException(
            "the monitor runs, or a calibration: another process holds it",
            path,
            "stop that one first, e.g. systemctl stop boothlamp, or give each its own log",
            null);
      }
      return channel;
    } catch (IOException failure) {
      throw new BoothLogException(
          "its lock file " + lockPath.getFileName() + " cannot be written (" + failure + ")",
          path,
          "check the rights of the folder",
          failure);
    }
  }

  private static boolean tryLock(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException heldByThisProcess) {
      return false;
    }
  }

  /** The kernel's boot id, as rows carry it, or null where the kernel does not tell. */
  public static String machineBoot() {
    return BootRow.machineBootNow();
  }

  /** Where the log is. */
  public Path path() {
    return path;
  }

  /**
   * All calibrations as they stand before the monitor starts.
   *
   * @return null if they cannot be read now: the writer tells of them as soon as they can
   */
  public CalibrationHistory calibrationsIfReadable() {
    if (suspect) {
      return null;
    }
    try {
      return CalibrationReading.history(connection());
    } catch (SQLException | BoothLogException failure) {
      Logger.warn("booth log {}: calibrations cannot be read yet: {}", path, failure.getMessage());
      return null;
    }
  }

  /** True if the file did not open because it is damaged. */
  boolean isSuspect() {
    return suspect;
  }

  /** Moves the damaged file away; the next use makes a new one. */
  Path setAside(LocalDateTime now) throws IOException {
    dropConnection(new IllegalStateException("the log is damaged"));
    Path aside = SetAside.move(path, now);
    suspect = false;
    return aside;
  }

  /** The connection; opened again if it was dropped. */
  LogConnection connection() {
    if (connection == null) {
      if (lockFile == null) {
        LogFile.prepareFolder(path);
        lockFile = lock(path);
      }
      connection = LogFile.openForWriting(path, BUSY_MILLIS);
    }
    return connection;
  }

  /** Gives up a connection that failed; the next use opens another. */
  void dropConnection(Exception failure) {
    if (connection != null) {
      closeAfter(connection, failure);
      connection = null;
    }
  }

  /** Closes the file and gives the lock back; a second call does nothing. */
  @Override
  public void close() {
    try {
      if (connection != null) {
        connection.close();
        connection = null;
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    } finally {
      giveLockBack();
    }
  }

  private void giveLockBack() {
    try {
      if (lockFile != null) {
        lockFile.close();
      }
    } catch (IOException failure) {
      throw new BoothLogException(
          "its lock file cannot be closed (" + failure + ")", path, "check the disk", failure);
    }
  }
}
