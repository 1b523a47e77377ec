package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * The welding circuit of one process: source, cable, electrode, arc.
 *
 * <p>Two rhythms. {@link #tick}, every half millisecond, does what is slow: the hand, the trigger,
 * the pool. {@link #step}, every 20 µs, does what is fast: the current through the inductance, the
 * melting electrode, the droplet. While nothing conducts only ticks are made. The equation of the
 * circuit, {@code L di/dt = e(i) - v(i)}, is solved by the linearly implicit Euler method, which
 * stays stable on the steepest part of the source's curve.
 *
 * <p>Coefficients without a named source are from memory, fitted so that a steady hand lands in the
 * middle of usual procedures. Confined to one thread.
 */
abstract class SimulatedArc {

  final double tickSeconds;
  final double stepSeconds;
  final SplittableRandom random;

  /** Current, electrode against work, A. */
  double amps;

  /** Voltage, electrode against work, V. */
  double volts;

  SimulatedArc(double tickSeconds, double stepSeconds, SplittableRandom random) {
    this.tickSeconds = tickSeconds;
    this.stepSeconds = stepSeconds;
    this.random = random;
  }

  /** Puts a fresh electrode in and sets the machine. */
  abstract void begin(SimulatedWelder welder);

  /** Follows the trainee by one tick. */
  abstract void tick(SimulatedWelder welder);

  /** Goes on by one step; called only while it conducts. */
  abstract void step();

  /** True if current can flow. */
  abstract boolean conducts();

  /** A value spread about 1, cut at three standard deviations. */
  final double spread(double deviation) {
    return 1 + deviation * Math.max(-3, Math.min(3, random.nextGaussian()));
  }

  /** The next place of something that moves towards an aim. */
  final double approach(double place, double aim, double perSecond) {
    double most = perSecond * tickSeconds;
    return place + Math.max(-most, Math.min(most, aim - place));
  }
}
