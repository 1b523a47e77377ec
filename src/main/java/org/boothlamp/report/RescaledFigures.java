package org.boothlamp.report;

import java.util.List;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.calibration.Channel;
import org.boothlamp.signal.Polarity;

/** The figures of a run by another scale of one channel; levels and excursions left out. */
final class RescaledFigures {

  private RescaledFigures() {}

  static RunRecord of(
      RunRecord run, RunTrace trace, Channel channel, Rescale rescale, CalibrationNumbers numbers) {
    double amps = signedMean(run, run.meanAmps(), trace.meanAmps());
    double volts = signedMean(run, run.meanVolts(), trace.meanVolts());
    boolean isCurrent = channel == Channel.CURRENT;
    double watts = rescale.product(run.meanWatts(), isCurrent ? volts : amps);
    return new RunRecord(
        run.id(),
        run.booth(),
        run.trainee(),
        run.procedureId(),
        run.procedureRevision(),
        run.pass(),
        run.process(),
        run.windows(),
        run.startWallMillis(),
        run.startSeconds(),
        run.lengthSeconds(),
        isCurrent ? meanAbsolute(run, run.meanAmps(), amps, rescale) : run.meanAmps(),
        isCurrent ? run.meanVolts() : meanAbsolute(run, run.meanVolts(), volts, rescale),
        isCurrent ? rescale.rms(run.rmsAmps(), amps) : run.rmsAmps(),
        isCurrent ? run.rmsVolts() : rescale.rms(run.rmsVolts(), volts),
        energy(run, watts),
        watts,
        polarity(run, isCurrent, rescale),
        run.shortCircuits(),
        run.arcOuts(),
        run.greenSeconds(),
        run.amberSeconds(),
        run.redSeconds(),
        run.settlingSeconds(),
        run.faultSeconds(),
        run.missingSeconds(),
        numbers.isComplete(),
        numbers,
        run.end(),
        List.of(),
        // Why it was outside was read in the other scale's amps and volts.
        run.notes().withTechnique(null));
  }

  /** At AC the mean of the trace, elsewhere the mean of the absolute values with its sign. */
  private static double signedMean(RunRecord run, double meanAbsolute, double[] trace) {
    double ofTrace = meanOf(trace);
    return run.polarity() == Polarity.AC ? ofTrace : Math.copySign(meanAbsolute, ofTrace);
  }

  private static double meanOf(double[] trace) {
    double sum = 0;
    int points = 0;
    for (double value : trace) {
      if (!Double.isNaN(value)) {
        sum += value;
        points++;
      }
    }
    return points == 0 ? 0 : sum / points;
  }

  /** At AC the offset takes from one half wave what it adds to the other. */
  private static double meanAbsolute(
      RunRecord run, double before, double signedMean, Rescale rescale) {
    return run.polarity() == Polarity.AC
        ? Math.abs(rescale.gain()) * before
        : Math.abs(rescale.value(signedMean));
  }

  /** The mean power leaves out half a slot at either edge, the energy does not. */
  private static double energy(RunRecord run, double watts) {
    return run.meanWatts() == 0 ? run.energyJoules() : run.energyJoules() * watts / run.meanWatts();
  }

  private static Polarity polarity(RunRecord run, boolean isCurrent, Rescale rescale) {
    if (!isCurrent || rescale.gain() > 0) {
      return run.polarity();
    }
    return switch (run.polarity()) {
      case DC_PLUS -> Polarity.DC_MINUS;
      case DC_MINUS -> Polarity.DC_PLUS;
      case AC -> Polarity.AC;
    };
  }
}
