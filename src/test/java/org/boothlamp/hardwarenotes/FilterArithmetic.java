package org.boothlamp.hardwarenotes;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** What sensors.md says of its filters, computed again: two single poles in a row. */
final class FilterArithmetic {

  private static final int MOST_STEPS = 1_000;
  private static final double ARC_VOLTS = 22;
  private static final double SHORTED_VOLTS = 3;
  private static final double THRESHOLD_VOLTS = 8;

  private final Notes notes;
  private final double first;
  private final double second;

  /** Time constants from the notes' parts, seconds. */
  private FilterArithmetic(Notes notes) {
    this.notes = notes;
    first = source() * notes.part("C1");
    second = notes.part("R6") * notes.part("C2");
  }

  private double source() {
    double top = notes.part("R1") + notes.part("R2") + notes.part("R3") + notes.part("R4");
    return top * notes.part("R5") / (top + notes.part("R5"));
  }

  static Map<String, Double> results(Notes notes) {
    FilterArithmetic filter = new FilterArithmetic(notes);
    Map<String, Double> results = new LinkedHashMap<>();
    results.put("r-source", filter.source());
    results.put("f-1", 1 / (2 * Math.PI * filter.first));
    results.put("f-2", 1 / (2 * Math.PI * filter.second));
    results.put("f-both", filter.halfPowerHz());
    results.put("a-nyquist", filter.decibels(notes.part("F_S") / 2));
    results.put("a-nyquist-5", filter.decibels(notes.part("F_S5") / 2));
    results.put("a-ripple", filter.decibels(notes.part("F_RIP")));
    results.put("a-60", filter.loss(60));
    results.put("a-200", filter.loss(200));
    results.putAll(filter.shortCircuit());
    results.putAll(filter.skew());
    return results;
  }

  private double decibels(double hertz) {
    double omega = 2 * Math.PI * hertz;
    return 10
        * Math.log10((1 + omega * omega * first * first) * (1 + omega * omega * second * second));
  }

  private double loss(double hertz) {
    return 1 - Math.pow(10, -decibels(hertz) / 20);
  }

  private double halfPowerHz() {
    return solve(hertz -> decibels(hertz) - 10 * Math.log10(2), 1, 100_000);
  }

  /** Response to a step from 0 to 1 of two different poles in a row. */
  private double step(double seconds) {
    return 1
        - (first * Math.exp(-seconds / first) - second * Math.exp(-seconds / second))
            / (first - second);
  }

  private Map<String, Double> shortCircuit() {
    double swing = ARC_VOLTS - SHORTED_VOLTS;
    double fall = solve(t -> step(t) - (ARC_VOLTS - THRESHOLD_VOLTS) / swing, 0, 0.01);
    double rise = solve(t -> step(t) - (THRESHOLD_VOLTS - SHORTED_VOLTS) / swing, 0, 0.01);
    return Map.of("t-fall", fall, "t-rise", rise, "t-short", fall - rise);
  }

  private Map<String, Double> skew() {
    double current =
        notes.part("R11") * notes.part("C11")
            + notes.part("R12") * notes.part("C12")
            + 1 / (2 * Math.PI * notes.part("BW_CL"));
    double skew = current - first - second;
    return Map.of(
        "t-skew", skew, "e-skew", powerError(skew), "e-skew-turns", powerError(notes.part("T_SK")));
  }

  private static double powerError(double seconds) {
    return 1 - Math.cos(2 * Math.PI * 200 * seconds);
  }

  private static double solve(UnivariateFunction function, double low, double high) {
    return new BrentSolver(1e-12).solve(MOST_STEPS, function, low, high);
  }
}
