package org.boothlamp.calibration;

/**
 * How the possible values of an influence are spread, and what its value is divided by to make a
 * standard uncertainty (JCGM 100:2008 4.3.7, 4.3.9, F.2.2.1, H.1.3.4; from memory).
 */
public enum Distribution {
  /** The value is a standard uncertainty already. */
  NORMAL(1),
  /** Anything within plus or minus the value is as likely. */
  RECTANGULAR(Math.sqrt(3)),
  /** Within plus or minus the value, the middle likelier. */
  TRIANGULAR(Math.sqrt(6)),
  /** Within plus or minus the value, the ends likelier, as of a sine wave. */
  ARCSINE(Math.sqrt(2));

  /** The variance of rounding to a step is the step squared over this. */
  static final double STEPS = 12;

  private final double divisor;

  Distribution(double divisor) {
    this.divisor = divisor;
  }

  public double divisor() {
    return divisor;
  }
}
