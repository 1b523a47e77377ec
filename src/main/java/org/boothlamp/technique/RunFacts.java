package org.boothlamp.technique;

/**
 * What is known of a run besides its trace and its excursions. Immutable.
 *
 * @param meanAmps mean of the absolute current, A; NaN if not known
 * @param rmsAmps RMS current, A; NaN if not known
 * @param arcOuts interruptions inside the run
 * @param transfer short-circuit transfer, or null if not measured
 * @param swings pulses or alternating current, or null if there were none or they were not measured
 */
public record RunFacts(
    double meanAmps, double rmsAmps, int arcOuts, TransferFigures transfer, SwingFigures swings) {

  /** Only what a trace tells. */
  public static final RunFacts NONE = new RunFacts(Double.NaN, Double.NaN, 0, null, null);

  /** RMS over mean, at least 1: short circuits make it larger. */
  double formFactor() {
    return rmsAmps >= meanAmps ? rmsAmps / meanAmps : 1;
  }
}
