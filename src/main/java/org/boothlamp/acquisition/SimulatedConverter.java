package org.boothlamp.acquisition;

import java.util.SplittableRandom;
import org.boothlamp.signal.ChannelScale;

/**
 * Clamp, noise, rounding and clipping: amps and volts to counts. Samples both channels at the same
 * moment, as the pairs promise. Confined to one thread.
 */
final class SimulatedConverter {

  private static final double NOTHING_AMPS = 1e-9;

  private final SplittableRandom random;
  private final int lowestCount;
  private final int highestCount;
  private final double ampsPerCount;
  private final double currentZero;
  private final double voltsPerCount;
  private final double voltageZero;
  private final double noiseAmps;
  private final double noiseVolts;

  /** Share of the way to the true current that the clamp still lacks after a step. */
  private final double leftShare;

  private double clampAmps;

  SimulatedConverter(SimulatedSensor sensor, double stepSeconds, SplittableRandom random) {
    this.random = random;
    lowestCount = sensor.lowestCount();
    highestCount = sensor.highestCount();
    ChannelScale current = sensor.scale().current();
    ChannelScale voltage = sensor.scale().voltage();
    ampsPerCount = current.unitsPerCount();
    currentZero = current.zeroCount();
    voltsPerCount = voltage.unitsPerCount();
    voltageZero = voltage.zeroCount();
    noiseAmps = sensor.noiseAmps();
    noiseVolts = sensor.noiseVolts();
    leftShare = Math.exp(-2 * Math.PI * sensor.clampBandwidthHz() * stepSeconds);
  }

  /** One step at this current. */
  void follow(double amps) {
    clampAmps = amps + (clampAmps - amps) * leftShare;
  }

  /** Steps without current. */
  void rest(int steps) {
    clampAmps = Math.abs(clampAmps) < NOTHING_AMPS ? 0 : clampAmps * Math.pow(leftShare, steps);
  }

  short currentCount() {
    double noisy = clampAmps + noiseAmps * random.nextGaussian();
    return clip(noisy / ampsPerCount + currentZero);
  }

  short voltageCount(double volts) {
    double noisy = volts + noiseVolts * random.nextGaussian();
    return clip(noisy / voltsPerCount + voltageZero);
  }

  private short clip(double count) {
    long whole = Math.round(count);
    return (short) Math.max(lowestCount, Math.min(highestCount, whole));
  }
}
