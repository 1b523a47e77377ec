package org.boothlamp.health;

import org.boothlamp.arc.ArcState;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.TrailingAverage;

/**
 * Which way the current runs, against the procedure and against the voltage. Where the two sensors
 * disagree, one of them is turned round, and the polarity of the current is not known. Confined to
 * one thread.
 */
final class PolarityRule {

  /** 0.2 s: four periods and more of any alternating arc. */
  private static final int WINDOW_SLOTS = 20;

  /** And 0.1 s more, so that it is 0.3 s of arc. */
  private static final int CONFIRM_SLOTS = 10;

  /**
   * Power as a share of amps times volts: an arc takes nearly all of them, and a tap that is off or
   * a turn half-way through the window gives little either way.
   */
  private static final double LEAST_SHARE = 0.2;

  final FaultState wrong = new FaultState(CONFIRM_SLOTS);
  final FaultState disagree = new FaultState(CONFIRM_SLOTS);
  private final PairScale scale;
  private final TrailingAverage arc = new TrailingAverage(WINDOW_SLOTS);

  PolarityRule(PairScale scale) {
    this.scale = scale;
  }

  void accept(Reading reading) {
    if (reading.arc == ArcState.OFF) {
      arc.clear();
      wrong.clear();
      disagree.clear();
    } else if (reading.flowing && reading.isAtArcVolts()) {
      arc.add(reading.sums);
      if (reading.arc == ArcState.ARC && arc.slots() == WINDOW_SLOTS) {
        judge(reading);
      }
    }
  }

  private void judge(Reading reading) {
    PairSums sums = arc.sums();
    double amps = sums.meanAbsoluteAmps(scale);
    double volts = sums.meanAbsoluteVolts(scale);
    double power = sums.meanWatts(scale) / (amps * volts);
    boolean otherWay =
        reading.asked != null && Polarity.of(sums.meanAmps(scale), amps) != reading.asked;
    long firstSlot = reading.number - WINDOW_SLOTS + 1;
    disagree.look(power < -LEAST_SHARE, firstSlot, reading.number);
    wrong.look(otherWay && power > LEAST_SHARE, firstSlot, reading.number);
  }
}
