package org.boothlamp.technique;

import java.util.Arrays;

/**
 * Means of amps and volts over blocks of points that follow each other: what the hand does is
 * slower than a block, what the arc does by itself is faster. Only whole blocks count. Immutable.
 */
record Blocks(double[] amps, double[] volts) {

  static Blocks of(RunProfile profile, boolean[] use, int blockPoints) {
    int most = profile.size() / blockPoints;
    double[] amps = new double[most];
    double[] volts = new double[most];
    int count = 0;
    int from = 0;
    while (from + blockPoints <= profile.size()) {
      int gap = lastGap(profile, use, from, from + blockPoints);
      if (gap >= 0) {
        from = gap + 1;
        continue;
      }
      amps[count] = meanAmps(profile, from, from + blockPoints);
      volts[count] = meanVolts(profile, from, from + blockPoints);
      count++;
      from += blockPoints;
    }
    return new Blocks(Arrays.copyOf(amps, count), Arrays.copyOf(volts, count));
  }

  /** The last point of the range that is not to be used; -1 if all are. */
  private static int lastGap(RunProfile profile, boolean[] use, int from, int until) {
    for (int k = until - 1; k >= from; k--) {
      if (!use[k] || !profile.isOn(k)) {
        return k;
      }
    }
    return -1;
  }

  private static double meanAmps(RunProfile profile, int from, int until) {
    double sum = 0;
    for (int k = from; k < until; k++) {
      sum += profile.amps(k);
    }
    return sum / (until - from);
  }

  private static double meanVolts(RunProfile profile, int from, int until) {
    double sum = 0;
    for (int k = from; k < until; k++) {
      sum += profile.volts(k);
    }
    return sum / (until - from);
  }

  int count() {
    return amps.length;
  }
}
