package org.boothlamp.monitor;

/** Gives up what can be spared when a disk is full. Safe to share. */
@FunctionalInterface
public interface RoomMaker {

  /** Has nothing to spare. */
  RoomMaker NONE = bytes -> false;

  /**
   * Deletes the oldest first, until so many bytes are free again.
   *
   * @param bytes how many are wanted
   * @return true if that many were deleted; false if there was less to delete, which is then gone
   */
  boolean makeRoom(long bytes);
}
