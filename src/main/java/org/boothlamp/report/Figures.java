package org.boothlamp.report;

import java.util.List;

/**
 * What several runs come to. Immutable.
 *
 * @param runs how many
 * @param arcSeconds their lengths together, arc-outs and missing time inside
 * @param greenSeconds time judged green
 * @param amberSeconds time judged amber
 * @param redSeconds time judged red
 * @param settlingSeconds time not judged
 * @param faultSeconds time under a fault
 * @param missingSeconds time for which nothing was measured
 * @param meanAmps mean over the runs of {@link RunRecord#amps()}, each weighted by its measured
 *     time; NaN if nothing was measured or if the runs belong to different passes
 * @param meanVolts likewise of {@link RunRecord#volts()}
 * @param energyJoules arc energy
 * @param arcOuts interruptions bridged
 * @param excursions by quantity and side
 */
public record Figures(
    int runs,
    double arcSeconds,
    double greenSeconds,
    double amberSeconds,
    double redSeconds,
    double settlingSeconds,
    double faultSeconds,
    double missingSeconds,
    double meanAmps,
    double meanVolts,
    double energyJoules,
    int arcOuts,
    List<ExcursionTally> excursions) {

  public Figures {
    excursions = List.copyOf(excursions);
  }

  /** Time that was judged at all, s. */
  public double judgedSeconds() {
    return greenSeconds + amberSeconds + redSeconds;
  }

  /** Time inside the window (green and amber), s. */
  public double insideSeconds() {
    return greenSeconds + amberSeconds;
  }

  /** Share of the judged time inside the window, 0 to 1; NaN if nothing was judged. */
  public double insideShare() {
    return insideSeconds() / judgedSeconds();
  }

  /** Gathers runs. Confined to one thread. */
  static final class Adder {

    private final ExcursionTally.Adder excursions = new ExcursionTally.Adder();
    private final WeightedMean amps = new WeightedMean();
    private final WeightedMean volts = new WeightedMean();
    private int runs;
    private double arcSeconds;
    private double greenSeconds;
    private double amberSeconds;
    private double redSeconds;
    private double settlingSeconds;
    private double faultSeconds;
    private double missingSeconds;
    private double energyJoules;
    private int arcOuts;

    void add(RunRecord run) {
      runs++;
      arcSeconds += run.lengthSeconds();
      addSignals(run);
      missingSeconds += run.missingSeconds();
      amps.add(run.amps(), run.measuredSeconds());
      volts.add(run.volts(), run.measuredSeconds());
      energyJoules += run.energyJoules();
      arcOuts += run.arcOuts();
      excursions.add(run.excursions());
    }

    private void addSignals(RunRecord run) {
      greenSeconds += run.greenSeconds();
      amberSeconds += run.amberSeconds();
      redSeconds += run.redSeconds();
      settlingSeconds += run.settlingSeconds();
      faultSeconds += run.faultSeconds();
    }

    /** The figures of runs of one pass. */
    Figures figures() {
      return figures(amps.value(), volts.value());
    }

    /** The figures without means: those of different passes mixed would say nothing. */
    Figures figuresOfDifferentPasses() {
      return figures(Double.NaN, Double.NaN);
    }

    private Figures figures(double meanAmps, double meanVolts) {
      return new Figures(
          runs,
          arcSeconds,
          greenSeconds,
          amberSeconds,
          redSeconds,
          settlingSeconds,
          faultSeconds,
          missingSeconds,
          meanAmps,
          meanVolts,
          energyJoules,
          arcOuts,
          excursions.tallies());
    }
  }

  /** A mean that leaves out what is not known. */
  private static final class WeightedMean {

    private double sum;
    private double weights;

    void add(double value, double weight) {
      if (!Double.isNaN(value) && weight > 0) {
        sum += value * weight;
        weights += weight;
      }
    }

    double value() {
      return sum / weights;
    }
  }
}
