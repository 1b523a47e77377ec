package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Level;
import org.boothlamp.judging.WindowTooNarrowException;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.Polarity;

/**
 * Computes runs again as if another calibration had scaled one of their channels.
 *
 * <p>Every scale is a straight line, so that means, RMS, mean power and energy of a direct current
 * follow exactly from the stored ones, for the part of the time that the channel keeps its
 * direction. At AC the offset's share rests on the trace. Levels are judged again on the trace of
 * 20 Hz, by amps and volts alone. Excursions, short circuits, start, length and arc-outs rest on
 * single pairs or slots, which the log does not keep: the first are left out, the others stay.
 *
 * <p>Confined to one thread.
 */
public final class Recalculation {

  private static final ExpandedUncertainty NOT_KNOWN = new ExpandedUncertainty(0, 0);

  private final CalibrationRecord under;
  private final CalibrationHistory history;
  private final JudgingRule rule;
  private final ChannelUncertainties stated;
  private final Channel channel;
  private int recomputed;
  private int notJudged;
  private int zeroNotSeen;
  private final List<Long> otherHardware = new ArrayList<>();

  /**
   * @param under an accepted calibration
   * @param history all calibrations of the booth
   * @param rule times of the judging
   * @param stated U of a channel without a calibration; null if not known, and then the caution
   *     band of that channel is the tenth of its window
   */
  public Recalculation(
      CalibrationRecord under,
      CalibrationHistory history,
      JudgingRule rule,
      ChannelUncertainties stated) {
    this.under = under;
    this.history = history;
    this.rule = rule;
    this.stated = stated;
    this.channel = under.channel();
  }

  /** The run under the other calibration; the run itself if it was measured by other hardware. */
  public RunRecord apply(RunRecord run, RunTrace trace) {
    ChannelScale measuredBy = channel.of(trace.scale());
    if (!nominalOf(run, measuredBy).equals(under.head().nominal())) {
      otherHardware.add(run.id());
      return run;
    }
    recomputed++;
    Rescale rescale = Rescale.of(measuredBy, under.finish().scale());
    if (channel == Channel.CURRENT && trace.zeroKnown()) {
      rescale = rescale.aboutZero();
    } else if (channel == Channel.CURRENT) {
      zeroNotSeen++;
    }
    RunRecord figures = RescaledFigures.of(run, trace, channel, rescale, numbersOf(run));
    return judged(figures, trace, rescale);
  }

  /** What the recomputed runs have in common, to be asked after the last. */
  public Recomputed summary() {
    return new Recomputed(under, recomputed, notJudged, zeroNotSeen, otherHardware);
  }

  private ChannelScale nominalOf(RunRecord run, ChannelScale measuredBy) {
    CalibrationRecord then = history.find(run.calibrations().of(channel));
    return then == null ? measuredBy : then.head().nominal();
  }

  private CalibrationNumbers numbersOf(RunRecord run) {
    return channel == Channel.CURRENT
        ? new CalibrationNumbers(under.number(), run.calibrations().voltage())
        : new CalibrationNumbers(run.calibrations().current(), under.number());
  }

  private RunRecord judged(RunRecord run, RunTrace trace, Rescale rescale) {
    List<CautionBand> bands = bands(run);
    if (run.polarity() == Polarity.AC || bands.isEmpty()) {
      notJudged += run.windows().isEmpty() ? 0 : 1;
      return run.withLevels(0, 0, 0, run.lengthSeconds() - run.faultSeconds(), run.faultSeconds());
    }
    TraceJudging judging = new TraceJudging(bands, rule);
    judging.judge(
        rescaled(trace.meanAmps(), Channel.CURRENT, rescale),
        rescaled(trace.meanVolts(), Channel.VOLTAGE, rescale),
        trace.fault(),
        run.lengthSeconds());
    return run.withLevels(
        judging.seconds(Level.GREEN),
        judging.seconds(Level.AMBER),
        judging.seconds(Level.RED),
        judging.settlingSeconds(),
        judging.faultSeconds());
  }

  private double[] rescaled(double[] readings, Channel of, Rescale rescale) {
    Rescale own = of == channel ? rescale : Rescale.NONE;
    double[] values = new double[readings.length];
    for (int k = 0; k < values.length; k++) {
      values[k] = own.value(readings[k]);
    }
    return values;
  }

  /** Windows of amps and volts; empty if there is none, or U leaves one of them no green. */
  private List<CautionBand> bands(RunRecord run) {
    Pass pass = new Pass(run.pass(), run.windows(), Double.NaN, Double.NaN);
    ChannelUncertainties uncertainties =
        new ChannelUncertainties(
            uncertainty(run, Channel.CURRENT), uncertainty(run, Channel.VOLTAGE), true);
    List<CautionBand> bands = new ArrayList<>();
    for (Window window : run.windows()) {
      if (window.quantity() == Quantity.AMPS || window.quantity() == Quantity.VOLTS) {
        try {
          bands.add(CautionBand.of(pass, window, uncertainties));
        } catch (WindowTooNarrowException noGreen) {
          return List.of();
        }
      }
    }
    return bands;
  }

  private ExpandedUncertainty uncertainty(RunRecord run, Channel of) {
    CalibrationRecord record = history.find(run.calibrations().of(of));
    if (record != null && record.isAccepted()) {
      return record.finish().uncertainty();
    }
    if (stated == null) {
      return NOT_KNOWN;
    }
    return of == Channel.CURRENT ? stated.amps() : stated.volts();
  }
}
