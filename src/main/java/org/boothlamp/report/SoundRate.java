package org.boothlamp.report;

import java.util.function.DoubleConsumer;

/**
 * Brings samples to a rate that browsers play: their own if it is one, else a whole multiple or a
 * whole part of it, by a windowed sinc (Hann). Confined to one thread.
 */
final class SoundRate {

  /** Rates that browsers play: from memory. */
  static final int LEAST_HZ = 3_000;

  static final int MOST_HZ = 48_000;

  /** What a slower rate is brought to at least. */
  private static final int SLOW_TO_HZ = 8_000;

  /** Zero crossings of the sinc on either side. */
  private static final int LOBES = 8;

  private final int up;
  private final int down;
  private final double cutoff;
  private final double[] ring;
  private final DoubleConsumer out;
  private long taken;
  private long given;

  private SoundRate(int up, int down, DoubleConsumer out) {
    this.up = up;
    this.down = down;
    this.out = out;
    cutoff = Math.min(1, (double) up / down);
    ring = new double[2 * LOBES * down + 1];
  }

  /** From a rate in samples a second to the one that {@link #of} names. */
  static SoundRate from(int rateHz, DoubleConsumer out) {
    return new SoundRate(up(rateHz), down(rateHz), out);
  }

  /** The rate that samples of a rate are brought to. */
  static int of(int rateHz) {
    return rateHz * up(rateHz) / down(rateHz);
  }

  private static int up(int rateHz) {
    return rateHz < LEAST_HZ ? (SLOW_TO_HZ + rateHz - 1) / rateHz : 1;
  }

  private static int down(int rateHz) {
    return rateHz > MOST_HZ ? (rateHz + MOST_HZ - 1) / MOST_HZ : 1;
  }

  /** The next sample; hands on none, one or several. */
  void take(double sample) {
    if (up == down) {
      out.accept(sample);
      return;
    }
    ring[(int) (taken % ring.length)] = sample;
    taken++;
    giveUpTo(taken - 1 - half());
  }

  /** What the last samples still have to give. */
  void finish() {
    long end = taken;
    for (int k = 0; k < half() && up != down; k++) {
      ring[(int) (taken % ring.length)] = 0;
      taken++;
      giveUpTo(Math.min(end - 1, taken - 1 - half()));
    }
  }

  private int half() {
    return LOBES * down;
  }

  /** All outputs at or before an input whose neighbours have all arrived. */
  private void giveUpTo(long input) {
    while (given * down <= input * up) {
      out.accept(at((double) given * down / up));
      given++;
    }
  }

  private double at(double position) {
    long first = Math.max(0, (long) Math.ceil(position - half()));
    long last = Math.min(taken - 1, (long) Math.floor(position + half()));
    double sum = 0;
    for (long k = first; k <= last; k++) {
      sum += ring[(int) (k % ring.length)] * kernel(position - k);
    }
    return sum;
  }

  private double kernel(double distance) {
    double x = Math.PI * cutoff * distance;
    double sinc = Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x;
    return cutoff * sinc * (0.5 + 0.5 * Math.cos(Math.PI * distance / half()));
  }
}
