package org.boothlamp.sync;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Lets one process at a time send the rows of a log: held for a round, so that a command and a
 * running monitor take turns. The system gives it back however the process ends.
 */
public final class SyncLock implements AutoCloseable {

  private static final String FILE_NAME = "sync.lock";

  private final FileChannel channel;

  private SyncLock(FileChannel channel) {
    this.channel = channel;
  }

  /** The lock of a log, or null if somebody is sending its rows now. */
  public static SyncLock tryTake(Path boothLog) throws SyncException {
    Path path = boothLog.resolveSibling(FILE_NAME);
    try {
      FileChannel channel =
          FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (isLocked(channel)) {
        return new SyncLock(channel);
      }
      channel.close();
      return null;
    } catch (IOException failure) {
      throw SyncException.setUp(
          "the lock file " + path + " cannot be written (" + failure + ")",
          "check the rights of the folder",
          failure);
    }
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException heldByThisProcess) {
      return false;
    }
  }

  @Override
  public void close() throws SyncException {
    try {
      channel.close();
    } catch (IOException failure) {
      throw SyncException.later("the lock file cannot be closed", "check the disk", failure);
    }
  }
}
