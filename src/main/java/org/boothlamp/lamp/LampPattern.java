package org.boothlamp.lamp;

import org.boothlamp.judging.Signal;

/**
 * Which of the three lights are lit for a signal, and when that changes by itself. A pure function
 * of the signal and the time since it began; no signal flashes more than 3 times a second (WCAG
 * 2.x, success criterion 2.3.1). Immutable.
 *
 * @param redStyle whether red stays on or pulses
 */
public record LampPattern(RedStyle redStyle) {

  /** Bit of the green light. */
  public static final int GREEN = 1;

  /** Bit of the amber light. */
  public static final int AMBER = 2;

  /** Bit of the red light. */
  public static final int RED = 4;

  /** An idle lamp blinks this often: seldom enough not to draw the eye. */
  private static final long IDLE_PERIOD_NANOS = 4_000_000_000L;

  private static final long IDLE_BLINK_NANOS = 100_000_000L;

  /** Half a period of 1 Hz. */
  private static final long HALF_PERIOD_NANOS = 500_000_000L;

  /**
   * The lights that are lit.
   *
   * @param signal what is shown
   * @param elapsedNanos time since the signal began, not negative
   * @return the sum of {@link #GREEN}, {@link #AMBER} and {@link #RED} that are lit
   */
  public int lights(Signal signal, long elapsedNanos) {
    return switch (signal) {
      case DARK -> 0;
      case IDLE -> elapsedNanos % IDLE_PERIOD_NANOS < IDLE_BLINK_NANOS ? GREEN : 0;
      case SETTLING -> AMBER + GREEN;
      case GREEN -> GREEN;
      case AMBER -> AMBER;
      case RED -> redStyle == RedStyle.STEADY || inFirstHalf(elapsedNanos) ? RED : 0;
      case FAULT -> inFirstHalf(elapsedNanos) ? RED : AMBER;
    };
  }

  private static boolean inFirstHalf(long elapsedNanos) {
    return elapsedNanos / HALF_PERIOD_NANOS % 2 == 0;
  }

  /**
   * Time until the lights change while the signal stays.
   *
   * @param signal what is shown
   * @param elapsedNanos time since the signal began, not negative
   * @return at least 1 ns; {@link Long#MAX_VALUE} if they never change
   */
  public long nanosToChange(Signal signal, long elapsedNanos) {
    return switch (signal) {
      case DARK, SETTLING, GREEN, AMBER -> Long.MAX_VALUE;
      case IDLE -> nanosToIdleChange(elapsedNanos % IDLE_PERIOD_NANOS);
      case RED -> redStyle == RedStyle.STEADY ? Long.MAX_VALUE : nanosToHalf(elapsedNanos);
      case FAULT -> nanosToHalf(elapsedNanos);
    };
  }

  private static long nanosToIdleChange(long phaseNanos) {
    return (phaseNanos < IDLE_BLINK_NANOS ? IDLE_BLINK_NANOS : IDLE_PERIOD_NANOS) - phaseNanos;
  }

  private static long nanosToHalf(long elapsedNanos) {
    return HALF_PERIOD_NANOS - elapsedNanos % HALF_PERIOD_NANOS;
  }
}
