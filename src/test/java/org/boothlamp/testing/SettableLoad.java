package org.boothlamp.testing;

import java.util.Random;

/**
 * A load whose amps and volts a test sets, seen through sensors with a gain and a zero error of
 * their own. Never ends. Safe to share.
 */
public final class SettableLoad implements PairStream {

  private static final int NOISE_LENGTH = 9_973;
  private static final double NOISE_COUNTS = 0.8;

  private final double ampsPerCount;
  private final double voltsPerCount;
  private final float[] noise = new float[NOISE_LENGTH];
  private volatile double amps;
  private volatile double volts;
  private volatile double gain = 1;
  private volatile double zeroAmps;
  private volatile double driftAmpsPerPair;

  /** Right to the noise until {@link #clamp} says otherwise. */
  public SettableLoad(double ampsPerCount, double voltsPerCount) {
    this.ampsPerCount = ampsPerCount;
    this.voltsPerCount = voltsPerCount;
    Random random = new Random(5);
    for (int i = 0; i < NOISE_LENGTH; i++) {
      noise[i] = (float) (NOISE_COUNTS * random.nextGaussian());
    }
  }

  /** The current sensor shows {@code newGain} times the truth, and so many amps more. */
  public SettableLoad clamp(double newGain, double newZeroAmps) {
    gain = newGain;
    zeroAmps = newZeroAmps;
    return this;
  }

  /** A load that does not hold its level. */
  public SettableLoad drifting(double ampsPerPair) {
    driftAmpsPerPair = ampsPerPair;
    return this;
  }

  /** Sets the true current. */
  public void amps(double trueAmps) {
    amps = trueAmps;
  }

  /** Sets the true voltage. */
  public void volts(double trueVolts) {
    volts = trueVolts;
  }

  /** The true current now. */
  public double amps() {
    return amps;
  }

  /** The true voltage now. */
  public double volts() {
    return volts;
  }

  @Override
  public long pairs() {
    return Long.MAX_VALUE;
  }

  @Override
  public short current(long index) {
    double shown = gain * amps + zeroAmps + driftAmpsPerPair * index;
    return (short) Math.round(shown / ampsPerCount + noise[(int) (index % NOISE_LENGTH)]);
  }

  @Override
  public short voltage(long index) {
    return (short) Math.round(volts / voltsPerCount + noise[(int) (index * 7 % NOISE_LENGTH)]);
  }
}
