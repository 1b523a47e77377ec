package org.boothlamp.health;

import org.boothlamp.arc.ArcState;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;

/**
 * Which way the current runs, against the procedure and against the voltage. Where the two sensors
 * disagree, one of them is turned round, and the polarity of the current is not known. Confined to
 * one thread.
 */
final class PolarityRule {

  /** 0.2 s: four periods and more of any alternating arc; judged every half of it. */
  private static final int HALF_SLOTS = 10;

  /** Twice in a row, so that it is 0.3 s of arc. */
  private static final int CONFIRM_LOOKS = 2;

  static final int CONFIRM_SLOTS = (CONFIRM_LOOKS + 1) * HALF_SLOTS;

  /**
   * Power as a share of amps times volts: an arc takes nearly all of them, and a tap that is off or
   * a turn half-way through the window gives little either way.
   */
  private static final double LEAST_SHARE = 0.2;

  final FaultState wrong = new FaultState(CONFIRM_LOOKS);
  final FaultState disagree = new FaultState(CONFIRM_LOOKS);
  private final PairScale scale;
  private final PairSums window = new PairSums();
  private final PairSums before = new PairSums();
  private final PairSums half = new PairSums();
  private int slots;
  private boolean full;

  PolarityRule(PairScale scale) {
    this.scale = scale;
  }

  void accept(Reading reading) {
    if (reading.arc == ArcState.OFF) {
      clear();
    } else if (reading.flowing && reading.isAtArcVolts()) {
      half.add(reading.sums);
      slots++;
      if (slots == HALF_SLOTS) {
        endHalf(reading);
      }
    }
  }

  private void clear() {
    half.clear();
    slots = 0;
    full = false;
    wrong.clear();
    disagree.clear();
  }

  private void endHalf(Reading reading) {
    if (full && reading.arc == ArcState.ARC) {
      window.set(before);
      window.add(half);
      judge(reading);
    }
    before.set(half);
    full = true;
    half.clear();
    slots = 0;
  }

  private void judge(Reading reading) {
    double amps = window.meanAbsoluteAmps(scale);
    double volts = window.meanAbsoluteVolts(scale);
    double power = window.meanWatts(scale) / (amps * volts);
    boolean otherWay =
        reading.asked != null && Polarity.of(window.meanAmps(scale), amps) != reading.asked;
    long firstSlot = reading.number - 2 * HALF_SLOTS + 1;
    disagree.look(power < -LEAST_SHARE, firstSlot, reading.number);
    wrong.look(otherWay && power > LEAST_SHARE, firstSlot, reading.number);
  }
}
