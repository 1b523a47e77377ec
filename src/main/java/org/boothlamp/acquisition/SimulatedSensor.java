package org.boothlamp.acquisition;

import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;

/**
 * What stands between the simulated circuit and the counts. Immutable.
 *
 * @param scale counts to amps and volts; used the other way round here
 * @param pairsPerSecond output rate, {@value SourceFormat#LEAST_PAIRS_PER_SECOND} to 100,000
 * @param lowestCount lowest count of the converter; what is below is clipped to it
 * @param highestCount highest count, likewise
 * @param noiseAmps standard deviation of the current channel's noise, at least 0
 * @param noiseVolts standard deviation of the voltage channel's noise, at least 0
 * @param clampBandwidthHz corner of the current clamp's first-order low pass, above 0; infinite for
 *     a clamp that follows at once
 */
public record SimulatedSensor(
    PairScale scale,
    int pairsPerSecond,
    int lowestCount,
    int highestCount,
    double noiseAmps,
    double noiseVolts,
    double clampBandwidthHz) {

  /** Output rate if nothing else is asked for. */
  public static final int TYPICAL_PAIRS_PER_SECOND = 5_000;

  /** Fastest output rate. */
  public static final int MOST_PAIRS_PER_SECOND = 100_000;

  private static final double TYPICAL_NOISE_AMPS = 0.8;
  private static final double TYPICAL_NOISE_VOLTS = 0.08;

  public SimulatedSensor {
    requireRate(pairsPerSecond);
    if (lowestCount < Short.MIN_VALUE
        || highestCount > Short.MAX_VALUE
        || lowestCount >= highestCount) {
      throw new IllegalArgumentException(
          "counts must rise from lowest to highest inside 16 bits: lowestCount="
              + lowestCount
              + ", highestCount="
              + highestCount);
    }
    if (!(noiseAmps >= 0) || !(noiseVolts >= 0) || !(clampBandwidthHz > 0)) {
      throw new IllegalArgumentException(
          "noise must be at least 0 and the bandwidth above 0: noiseAmps="
              + noiseAmps
              + ", noiseVolts="
              + noiseVolts
              + ", clampBandwidthHz="
              + clampBandwidthHz);
    }
  }

  static void requireRate(int pairsPerSecond) {
    if (pairsPerSecond < SourceFormat.LEAST_PAIRS_PER_SECOND
        || pairsPerSecond > MOST_PAIRS_PER_SECOND) {
      throw new IllegalArgumentException(
          "the simulated booth gives "
              + SourceFormat.LEAST_PAIRS_PER_SECOND
              + " to "
              + MOST_PAIRS_PER_SECOND
              + " pairs a second: pairsPerSecond="
              + pairsPerSecond);
    }
  }

  /** A sensor with all 16 bits, typical noise and a fast clamp. */
  public static SimulatedSensor of(PairScale scale) {
    return new SimulatedSensor(
        scale,
        TYPICAL_PAIRS_PER_SECOND,
        Short.MIN_VALUE,
        Short.MAX_VALUE,
        TYPICAL_NOISE_AMPS,
        TYPICAL_NOISE_VOLTS,
        Double.POSITIVE_INFINITY);
  }

  /** This sensor at another rate. */
  public SimulatedSensor atRate(int otherPairsPerSecond) {
    return new SimulatedSensor(
        scale,
        otherPairsPerSecond,
        lowestCount,
        highestCount,
        noiseAmps,
        noiseVolts,
        clampBandwidthHz);
  }

  /** This sensor with a converter of another range. */
  public SimulatedSensor withRange(int otherLowestCount, int otherHighestCount) {
    return new SimulatedSensor(
        scale,
        pairsPerSecond,
        otherLowestCount,
        otherHighestCount,
        noiseAmps,
        noiseVolts,
        clampBandwidthHz);
  }

  /** This sensor without noise. */
  public SimulatedSensor withoutNoise() {
    return new SimulatedSensor(
        scale, pairsPerSecond, lowestCount, highestCount, 0, 0, clampBandwidthHz);
  }

  /** This sensor behind a slower clamp. */
  public SimulatedSensor withClampBandwidth(double hertz) {
    return new SimulatedSensor(
        scale, pairsPerSecond, lowestCount, highestCount, noiseAmps, noiseVolts, hertz);
  }

  SourceFormat format() {
    return new SourceFormat(pairsPerSecond, lowestCount, highestCount, "simulated booth");
  }
}
