package org.boothlamp.health;

import org.boothlamp.arc.ArcState;

/**
 * An arc's voltage without current: the clamp is not around the lead. The open-circuit volts of
 * some machines lie where arcs burn, but they stand still, or rise or fall once; so what counts is
 * volts that go up and down, or volts that stay as they were when the current vanished. Confined to
 * one thread.
 */
final class LostCurrentRule {

  /** Window for the ups and downs: 0.4 s holds a few droplets of any process with droplets. */
  private static final int WINDOW_SLOTS = 40;

  /** Slots of it that must be at arc volts; droplets short the others. */
  private static final int LEAST_SLOTS = 30;

  /** Up or down by this much is a move, far above noise in a mean of 10 ms. */
  private static final double MOVE_VOLTS = 2;

  /** Up, down and up, or the reverse: a trigger that is tapped makes one up and one down. */
  private static final int LEAST_MOVES = 3;

  /** No current is less than this: a clamp's zero within its band, and noise. */
  static final double MOST_AMPS = 3;

  /**
   * An arc that goes out leaves no volts, or open-circuit volts. Those lie above its own by the
   * slope of the machine, which is 0.02 Ω at the least; common practice, no source. Volts closer to
   * those of the arc than half of that times its amps are still the arc's.
   */
  private static final double HALF_SLOPE_OHMS = 0.01;

  /** 0.3 s after the current vanished … */
  static final int VANISHED_SLOTS = 30;

  /** … the volts must have stayed in so many slots; droplets short the others. */
  private static final int LEAST_SAME_SLOTS = 20;

  /** Weight of a slot in the amps and volts remembered of the arc: their last 0.1 s. */
  private static final double MEMORY = 0.1;

  final FaultState fault = new FaultState(1);
  private final double[] volts = new double[WINDOW_SLOTS];
  private int held;
  private int next;
  private int atArcVolts;
  private double arcVolts = Double.NaN;
  private double arcAmps;
  private int vanishedSlots;
  private int sameSlots;

  /** The slot before, which counts once the one after it is known to be no edge. */
  private double waitingVolts = Double.NaN;

  void accept(Reading reading) {
    if (reading.flowing || reading.absoluteAmps >= MOST_AMPS) {
      forget();
      remember(reading);
      fault.look(false, reading.number);
      return;
    }
    followVanished(reading);
    followMoves(reading);
    if (fault.isActive()) {
      fault.look(reading.isAtArcVolts(), reading.number);
    } else if (vanishedSlots == VANISHED_SLOTS && sameSlots >= LEAST_SAME_SLOTS) {
      fault.raise(reading.number - VANISHED_SLOTS + 1, reading.number);
    } else if (atArcVolts >= LEAST_SLOTS && moves() >= LEAST_MOVES) {
      fault.raise(reading.number - held, reading.number);
    }
  }

  private void forget() {
    held = 0;
    atArcVolts = 0;
    waitingVolts = Double.NaN;
    vanishedSlots = 0;
    sameSlots = 0;
  }

  private void remember(Reading reading) {
    if (reading.arc != ArcState.ARC || !reading.flowing) {
      arcVolts = Double.NaN;
    } else if (reading.isAtArcVolts()) {
      boolean first = Double.isNaN(arcVolts);
      arcVolts = first ? reading.absoluteVolts : mixed(arcVolts, reading.absoluteVolts);
      arcAmps = first ? reading.absoluteAmps : mixed(arcAmps, reading.absoluteAmps);
    }
  }

  private static double mixed(double before, double now) {
    return before + MEMORY * (now - before);
  }

  private void followVanished(Reading reading) {
    vanishedSlots++;
    double most = HALF_SLOPE_OHMS * arcAmps;
    sameSlots += Math.abs(reading.absoluteVolts - arcVolts) <= most ? 1 : 0;
  }

  /** An edge between arc volts and others is no move of an arc. */
  private void followMoves(Reading reading) {
    double now = reading.absoluteVolts;
    if (now > Reading.MOST_ARC_VOLTS) {
      forget();
      arcVolts = Double.NaN;
      return;
    }
    if (waitingVolts >= Reading.LEAST_ARC_VOLTS && now < Reading.LEAST_ARC_VOLTS) {
      waitingVolts = 0;
    }
    if (!Double.isNaN(waitingVolts)) {
      put(waitingVolts);
    }
    waitingVolts = now;
  }

  private void put(double slotVolts) {
    if (held == WINDOW_SLOTS) {
      atArcVolts -= volts[next] >= Reading.LEAST_ARC_VOLTS ? 1 : 0;
    } else {
      held++;
    }
    volts[next] = slotVolts;
    atArcVolts += slotVolts >= Reading.LEAST_ARC_VOLTS ? 1 : 0;
    next = next + 1 == WINDOW_SLOTS ? 0 : next + 1;
  }

  /** How often the volts turned round by more than a move; slots below arc volts are left out. */
  private int moves() {
    int moves = 0;
    int direction = 0;
    double turn = Double.NaN;
    int place = Math.floorMod(next - held, WINDOW_SLOTS);
    for (int k = 0; k < held; k++) {
      double now = volts[place];
      place = place + 1 == WINDOW_SLOTS ? 0 : place + 1;
      if (now < Reading.LEAST_ARC_VOLTS) {
        continue;
      }
      double way = now - turn;
      if (Double.isNaN(turn) || way * direction > 0) {
        turn = now;
      } else if (Math.abs(way) >= MOVE_VOLTS) {
        moves++;
        direction = way > 0 ? 1 : -1;
        turn = now;
      }
    }
    return moves;
  }
}
