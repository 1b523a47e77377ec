package org.boothlamp.report;

import java.util.List;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Level;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Slot;

/**
 * Judges a run again on its trace of 20 Hz: trailing averages of amps and volts against their
 * windows, every 0.1 s. The live judging works on slots of 0.01 s, so that each change of level may
 * lie 0.1 s elsewhere. Confined to one thread.
 */
final class TraceJudging {

  private static final double LEAST_AMPS = 9;
  private static final int EVERY_POINTS = 2;
  private static final int SLOTS_A_POINT =
      (int) Math.round(RunTrace.POINT_SECONDS * Slot.PER_SECOND);

  private final List<CautionBand> bands;
  private final double[] ringAmps;
  private final double[] ringVolts;
  private final int settlePoints;
  private int filled;
  private int next;
  private int since;
  private Level level;

  /** Seconds by {@link Level#ordinal}. */
  private final double[] seconds = new double[Level.values().length];

  private double settlingSeconds;
  private double faultSeconds;

  /**
   * @param bands windows of amps and volts only
   * @param rule times of averaging and settling
   */
  TraceJudging(List<CautionBand> bands, JudgingRule rule) {
    this.bands = bands;
    int points = Math.max(1, rule.averageSlots() / SLOTS_A_POINT);
    ringAmps = new double[points];
    ringVolts = new double[points];
    settlePoints = rule.settleSlots() / SLOTS_A_POINT;
  }

  /** Judges a whole run of a direct current; to be called once. */
  void judge(double[] amps, double[] volts, boolean[] fault, double lengthSeconds) {
    for (int k = 0; k < amps.length; k++) {
      double span = Math.min(RunTrace.POINT_SECONDS, lengthSeconds - k * RunTrace.POINT_SECONDS);
      count(fault[k] || Double.isNaN(amps[k]), Math.max(0, span));
      if (fault[k]) {
        beginAnew();
      } else {
        take(k, Math.abs(amps[k]), Math.abs(volts[k]));
      }
    }
  }

  private void count(boolean untrusted, double span) {
    if (untrusted) {
      faultSeconds += span;
    } else if (level == null) {
      settlingSeconds += span;
    } else {
      seconds[level.ordinal()] += span;
    }
  }

  private void beginAnew() {
    filled = 0;
    next = 0;
    since = 0;
    level = null;
  }

  /** The first point holds the start of the arc, points without current are arc-outs. */
  private void take(int k, double amps, double volts) {
    since++;
    if (k > 0 && amps >= LEAST_AMPS) {
      ringAmps[next] = amps;
      ringVolts[next] = volts;
      next = (next + 1) % ringAmps.length;
      filled = Math.min(filled + 1, ringAmps.length);
    }
    if (since >= settlePoints && since % EVERY_POINTS == 0 && filled > 0) {
      level = worst(mean(ringAmps), mean(ringVolts));
    }
  }

  private double mean(double[] ring) {
    double sum = 0;
    for (int i = 0; i < filled; i++) {
      sum += ring[i];
    }
    return sum / filled;
  }

  private Level worst(double amps, double volts) {
    Level worst = Level.GREEN;
    for (CautionBand band : bands) {
      Level one = band.level(band.window().quantity() == Quantity.AMPS ? amps : volts);
      worst = one.compareTo(worst) > 0 ? one : worst;
    }
    return worst;
  }

  double seconds(Level of) {
    return seconds[of.ordinal()];
  }

  double settlingSeconds() {
    return settlingSeconds;
  }

  double faultSeconds() {
    return faultSeconds;
  }
}
