package org.boothlamp.report;

import java.util.Arrays;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;

/** Traces for the runs of the invented evening: made of each run's own figures, without chance. */
final class EveningStrips {

  private static final double POINT_SECONDS = RunTrace.POINT_SECONDS;
  private static final double TAU = 2 * Math.PI;

  private EveningStrips() {}

  static RunStrip of(long id) {
    return EveningShift.runs().stream()
        .filter(run -> run.id() == id)
        .map(EveningStrips::of)
        .findFirst()
        .orElse(null);
  }

  static RunStrip of(RunRecord run) {
    int points = (int) Math.round(run.lengthSeconds() / POINT_SECONDS);
    double[] amps = wave(points, run.amps(), 4);
    double[] volts = wave(points, run.volts(), 1);
    for (ExcursionRecord one : run.excursions()) {
      double[] values = one.quantity() == Quantity.AMPS ? amps : volts;
      int from = Math.max(0, (int) (one.startSeconds() / POINT_SECONDS));
      int until = Math.min(points, from + (int) (one.lengthSeconds() / POINT_SECONDS));
      Arrays.fill(values, from, until, one.worst());
    }
    double[] low = amps.clone();
    for (int i = 0; i < run.arcOuts(); i++) {
      low[points * (i + 2) / (run.arcOuts() + 4)] = 0;
    }
    if (run.missingSeconds() > 0) {
      int until = points / 2 + (int) (run.missingSeconds() / POINT_SECONDS);
      Arrays.fill(amps, points / 2, until, Double.NaN);
      Arrays.fill(volts, points / 2, until, Double.NaN);
    }
    return RunStrip.of(amps, low, amps, volts, signals(run, points));
  }

  private static double[] wave(int points, double mean, double swing) {
    double[] values = new double[points];
    for (int i = 0; i < points; i++) {
      values[i] = mean + swing * Math.sin(TAU * i / 37) * Math.cos(TAU * i / 11);
    }
    return values;
  }

  private static Signal[] signals(RunRecord run, int points) {
    Signal[] signals = new Signal[points];
    Arrays.fill(signals, run.windows().isEmpty() ? Signal.SETTLING : Signal.GREEN);
    Arrays.fill(signals, points / 3, points / 2, nearOr(signals[0], run));
    for (ExcursionRecord one : run.excursions()) {
      int from = Math.max(0, (int) (one.startSeconds() / POINT_SECONDS));
      int until = Math.min(points, from + (int) ((one.lengthSeconds() + 0.5) / POINT_SECONDS));
      Arrays.fill(signals, from, until, Signal.RED);
    }
    Arrays.fill(signals, 0, Math.min(points, 20), Signal.SETTLING);
    if (run.faultSeconds() > 0) {
      Arrays.fill(signals, 20, points, Signal.FAULT);
    }
    return signals;
  }

  private static Signal nearOr(Signal usual, RunRecord run) {
    return run.amberSeconds() > 0 ? Signal.AMBER : usual;
  }
}
