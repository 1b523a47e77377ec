package org.boothlamp.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.boothlamp.judging.Signal;

/**
 * A run's trace, reduced to what a chart can show: at most {@link #MOST_POINTS} points of amps and
 * volts, and what the lamp showed. Amps and volts are without sign; NaN where nothing was measured.
 * Immutable as long as nobody changes the arrays.
 *
 * @param pointSeconds time between two points, s
 * @param amps means, one a point
 * @param volts likewise
 * @param signals what the lamp showed, in order of time, without gaps
 * @param arcOutSeconds moments at which the current was gone, s from the start
 */
public record RunStrip(
    double pointSeconds, Means amps, Means volts, List<Shown> signals, List<Double> arcOutSeconds) {

  /** More than these are not told apart at the width of a page. */
  static final int MOST_POINTS = 160;

  /** Current below which an arc is out (60 % of 15 A), A. */
  private static final double OUT_AMPS = 9;

  /** Two low points nearer than this are one arc-out, points of the trace. */
  private static final int SAME_ARC_OUT = 6;

  /**
   * One quantity.
   *
   * @param mean mean of each point
   * @param low lowest mean of 0.05 s in each point
   * @param high highest
   */
  public record Means(double[] mean, double[] low, double[] high) {

    /** Number of points. */
    int size() {
      return mean.length;
    }

    private static Means of(double[] values, int each) {
      int size = (values.length + each - 1) / each;
      Means means = new Means(new double[size], new double[size], new double[size]);
      for (int point = 0; point < size; point++) {
        means.fill(point, values, point * each, Math.min(values.length, (point + 1) * each));
      }
      return means;
    }

    private void fill(int point, double[] values, int from, int until) {
      double sum = 0;
      int known = 0;
      low[point] = Double.NaN;
      high[point] = Double.NaN;
      for (int i = from; i < until; i++) {
        double value = Math.abs(values[i]);
        if (!Double.isNaN(value)) {
          sum += value;
          low[point] = known == 0 ? value : Math.min(low[point], value);
          high[point] = known == 0 ? value : Math.max(high[point], value);
          known++;
        }
      }
      mean[point] = sum / known;
    }
  }

  /**
   * What the lamp showed for a while.
   *
   * @param signal the signal
   * @param fromSeconds from the run's start
   * @param untilSeconds likewise
   */
  public record Shown(Signal signal, double fromSeconds, double untilSeconds) {}

  public RunStrip {
    signals = List.copyOf(signals);
    arcOutSeconds = List.copyOf(arcOutSeconds);
  }

  /**
   * Reduces a trace. Every array has one value for each {@link RunTrace#POINT_SECONDS} from the
   * run's start.
   *
   * @param meanAmps signed mean current
   * @param lowestAmps lowest current
   * @param highestAmps highest current
   * @param meanVolts signed mean voltage
   * @param signals what the lamp showed
   */
  public static RunStrip of(
      double[] meanAmps,
      double[] lowestAmps,
      double[] highestAmps,
      double[] meanVolts,
      Signal[] signals) {
    int each = Math.max(1, (meanAmps.length + MOST_POINTS - 1) / MOST_POINTS);
    return new RunStrip(
        each * RunTrace.POINT_SECONDS,
        Means.of(meanAmps, each),
        Means.of(meanVolts, each),
        shown(signals),
        arcOuts(lowestAmps, highestAmps));
  }

  private static List<Shown> shown(Signal[] signals) {
    List<Shown> spells = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= signals.length; i++) {
      if (i == signals.length || signals[i] != signals[start]) {
        spells.add(
            new Shown(signals[start], start * RunTrace.POINT_SECONDS, i * RunTrace.POINT_SECONDS));
        start = i;
      }
    }
    return spells;
  }

  /** The lowest first: the log says how many there were. */
  private static List<Double> arcOuts(double[] lowest, double[] highest) {
    record Low(int point, double amps) {}
    List<Low> found = new ArrayList<>();
    int last = -SAME_ARC_OUT;
    for (int i = 1; i < lowest.length - 1; i++) {
      double amps = nearestToZero(lowest[i], highest[i]);
      if (amps < OUT_AMPS) {
        if (i - last >= SAME_ARC_OUT) {
          found.add(new Low(i, amps));
        }
        last = i;
      }
    }
    found.sort(Comparator.comparingDouble(Low::amps));
    return found.stream().map(low -> (low.point() + 0.5) * RunTrace.POINT_SECONDS).toList();
  }

  private static double nearestToZero(double low, double high) {
    return low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
  }

  /** Number of points; 0 if nothing was kept. */
  public int size() {
    return amps.size();
  }

  /** Length of the chart, s. */
  public double seconds() {
    return size() * pointSeconds;
  }
}
