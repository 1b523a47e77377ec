package org.boothlamp.acquisition;

/**
 * A two-way line of bytes that mends itself: {@link SerialLine} is the real one.
 *
 * <p>One thread reads, another may write; {@link #openings} and {@link #failure} may be asked from
 * any thread. Neither reading nor writing throws because of the line: a line that is down says so
 * and tries again by itself, in its reader's thread.
 */
public interface ByteLine extends AutoCloseable {

  /** Answer of {@link #read} while the line is not open. */
  int DOWN = -1;

  /**
   * Reads what has arrived; opens the line first if it is time to try.
   *
   * @param buffer filled from its start; at least as long as one frame
   * @param waitNanos longest time to wait for the first byte
   * @return bytes read, 0 if none came, {@link #DOWN} if the line is not open
   */
  int read(byte[] buffer, long waitNanos);

  /**
   * Writes the first {@code length} bytes without waiting for them to leave.
   *
   * @return false if the line is down or congested: nothing was written
   */
  boolean write(byte[] bytes, int length);

  /** Times the line was opened so far. */
  int openings();

  /** Why the line is down, or null if it is open or was not tried yet. */
  SourceException failure();

  /**
   * Closes for good, once what was written has left; a second call does nothing. Call it when
   * nobody reads any more.
   */
  @Override
  void close();
}
