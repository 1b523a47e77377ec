package org.boothlamp.monitor;

/**
 * The booth's own time of day: the monotonic clock plus one number. It never jumps by itself, so
 * that what was logged before and after stays in order; whoever knows better sets it, and then all
 * moments of this start move together. Safe to share; asking creates nothing.
 */
public final class BoothClock implements WallClock {

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private final NanoClock nano;
  private final WallClock machine;
  private volatile long baseMillis;

  /**
   * A clock that agrees with the machine's for now.
   *
   * @param machine the machine's own clock, which may be wrong and may jump
   */
  public BoothClock(NanoClock nano, WallClock machine) {
    this.nano = nano;
    this.machine = machine;
    baseMillis = machineBaseMillis();
  }

  @Override
  public long epochMillis() {
    return baseMillis + nano.nanoTime() / NANOS_PER_MILLI;
  }

  /** Time of day at which the monotonic clock stood at 0, ms since the epoch. */
  public long baseMillis() {
    return baseMillis;
  }

  /** The same number by the machine's clock as it is set now. */
  public long machineBaseMillis() {
    return machine.epochMillis() - nano.nanoTime() / NANOS_PER_MILLI;
  }

  /** Sets this clock. */
  public void setBaseMillis(long millis) {
    baseMillis = millis;
  }
}
