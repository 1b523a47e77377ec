package org.boothlamp.boothlog;

/**
 * Gives up files that matter less than the log when its disk is full: raw recordings, the oldest
 * first. Asked on the writer's thread before a row is kept waiting, at most a few times a second;
 * takes a fraction of a second.
 */
@FunctionalInterface
public interface RoomMaker {

  /** There is nothing that could go. */
  RoomMaker NONE = () -> false;

  /**
   * Deletes one thing, if there is any.
   *
   * @return true if there is more room than before
   */
  boolean makeRoom();
}
