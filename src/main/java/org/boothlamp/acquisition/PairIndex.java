package org.boothlamp.acquisition;

/**
 * Places a board's frames on one line of pair indexes that starts at 0 with the first pair taken
 * and grows with real time, whatever happens to the board.
 *
 * <p>A frame is placed by its own index: what it jumps ahead is pairs lost. Where that index means
 * nothing, because the board started again or another board was plugged in, the missing time is
 * taken from the monotonic clock. How the cases are told apart:
 *
 * <ul>
 *   <li>A board that starts says hello and counts from 0. So an index that goes back is believed
 *       only if a hello came since the last frame taken; else it is a duplicate and dropped. If the
 *       start's hello was damaged, the next one comes a second later and settles it.
 *   <li>Just after the hello of every second a true duplicate would pass for a start. It is told by
 *       its frame counter, which is one of the last few, and by its index, which is not 0.
 *   <li>After 2^31 pairs a start looks like a jump ahead. It is taken for a start if, by the clock,
 *       the jump is impossible and the start is not. If neither fits the clock the index is
 *       believed: its CRC was right.
 *   <li>After a reconnect the index is believed if it agrees with the clock.
 * </ul>
 *
 * Creates no objects. Confined to one thread.
 */
final class PairIndex {

  /** Answer of {@link #place} to a frame that was seen before. */
  static final long DUPLICATE = -1;

  /** Frames back that a duplicate may reach. */
  private static final int DUPLICATE_REACH_FRAMES = 8;

  /** How much later than its pairs a frame may arrive, seconds. */
  private static final double LATENESS_S = 1;

  /** How far board and host clocks may run apart, part of elapsed time. */
  private static final double CLOCK_DRIFT = 0.02;

  private int pairsPerSecond;
  private boolean begun;
  private boolean helloSinceFrame;
  private boolean reconnected;

  private int nextBoardIndex;
  private int lastCounter;
  private long nextIndex;
  private long lastArrivalNanos;
  private long lostPairs;

  /**
   * A hello came; its rate holds from now on. The index goes on at the same time: if the rate
   * changed it is counted as if all pairs before had come at the new one, so that index divided by
   * rate stays the time since the start.
   */
  void onHello(int newPairsPerSecond) {
    if (pairsPerSecond != 0 && newPairsPerSecond != pairsPerSecond) {
      nextIndex = Math.round((double) nextIndex / pairsPerSecond * newPairsPerSecond);
    }
    pairsPerSecond = newPairsPerSecond;
    helloSinceFrame = true;
  }

  /** The line was opened again. */
  void onReconnect() {
    reconnected = begun;
  }

  /**
   * Index of a frame's first pair, or {@link #DUPLICATE}.
   *
   * @param arrivalNanos monotonic time at which the frame was read
   */
  long place(SamplesFrame frame, long arrivalNanos) {
    int ahead = frame.firstIndex - nextBoardIndex;
    if (!begun) {
      begun = true;
    } else if (reconnected) {
      resume(frame, ahead, arrivalNanos);
    } else if (goesOn(frame, ahead, arrivalNanos)) {
      skip(ahead);
    } else if (helloSinceFrame && !looksLikeDuplicate(frame, ahead)) {
      resume(frame, ahead, arrivalNanos);
    } else {
      return DUPLICATE;
    }
    long index = nextIndex;
    nextIndex += frame.count;
    nextBoardIndex = frame.firstIndex + frame.count;
    lastCounter = frame.counter;
    lastArrivalNanos = arrivalNanos;
    helloSinceFrame = false;
    reconnected = false;
    return index;
  }

  /** True if the frame follows the last one, at once or after lost pairs. */
  private boolean goesOn(SamplesFrame frame, int ahead, long arrivalNanos) {
    double possiblePairs = possiblePairs(arrivalNanos);
    boolean isStart =
        ahead > possiblePairs && Integer.toUnsignedLong(frame.firstIndex) <= possiblePairs;
    return ahead >= 0 && !isStart;
  }

  private boolean looksLikeDuplicate(SamplesFrame frame, int ahead) {
    int framesBack = lastCounter - frame.counter & 0xFF;
    return frame.firstIndex != 0
        && framesBack < DUPLICATE_REACH_FRAMES
        && ahead < 0
        && -ahead <= DUPLICATE_REACH_FRAMES * SamplesFrame.CAPACITY;
  }

  /** Most pairs that a board can have sampled since the last frame. */
  private double possiblePairs(long arrivalNanos) {
    return (secondsSinceFrame(arrivalNanos) * (1 + CLOCK_DRIFT) + LATENESS_S) * pairsPerSecond;
  }

  private void skip(int pairs) {
    lostPairs += pairs;
    nextIndex += pairs;
  }

  /** Goes on by the index if it agrees with the clock, else by the clock. */
  private void resume(SamplesFrame frame, int ahead, long arrivalNanos) {
    double seconds = secondsSinceFrame(arrivalNanos);
    long missing = Math.max(0, Math.round(seconds * pairsPerSecond) - frame.count);
    double tolerance = (seconds * CLOCK_DRIFT + LATENESS_S) * pairsPerSecond;
    if (ahead >= 0 && Math.abs(ahead - missing) <= tolerance) {
      skip(ahead);
    } else {
      nextIndex += missing;
    }
  }

  private double secondsSinceFrame(long arrivalNanos) {
    return (arrivalNanos - lastArrivalNanos) * 1e-9;
  }

  /** Pairs that the index says were sent and that never arrived. */
  long lostPairs() {
    return lostPairs;
  }
}
