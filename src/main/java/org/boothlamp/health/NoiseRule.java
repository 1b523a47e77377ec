package org.boothlamp.health;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Slot;

/**
 * Noise or mains hum while no current flows. Looked at in pieces of 20 ms, a period of the mains,
 * so that a machine that is switched on makes one loud piece and not a fault. Confined to one
 * thread.
 */
final class NoiseRule {

  /** Standard deviation; a sound clamp has below 1 A. Common practice, no source. */
  static final double MOST_AMPS = 3;

  /** Standard deviation; a sound divider has below 0.1 V. Common practice, no source. */
  static final double MOST_VOLTS = 1;

  /** At open circuit some machines ripple by this share of their volts; from memory. */
  private static final double RIPPLE_SHARE = 0.1;

  private static final int LEAST_PIECE_SLOTS = 2;

  /** Fewer pairs tell no standard deviation. */
  private static final int LEAST_PIECE_PAIRS = 20;

  private static final int CONFIRM_SLOTS = 30;

  final FaultState fault;
  private final PairScale scale;
  private final int pieceSlots;
  private final PairSums piece = new PairSums();
  private int slots;

  NoiseRule(PairScale scale, int pairsPerSecond) {
    this.scale = scale;
    int pairsPerSlot = pairsPerSecond / Slot.PER_SECOND;
    pieceSlots = Math.max(LEAST_PIECE_SLOTS, LEAST_PIECE_PAIRS / Math.max(1, pairsPerSlot));
    fault = new FaultState((CONFIRM_SLOTS + pieceSlots - 1) / pieceSlots);
  }

  void accept(Reading reading, IdleWatch idle) {
    if (!idle.isQuiet() && !idle.isImpossibleCurrent()) {
      piece.clear();
      slots = 0;
      fault.keep(reading.number);
      return;
    }
    piece.add(reading.sums);
    slots++;
    if (slots == pieceSlots) {
      judgePiece(reading.number);
      piece.clear();
      slots = 0;
    }
  }

  /** Ripple may hide hum, so a piece that is loud for that reason tells nothing. */
  private void judgePiece(long slot) {
    double amps = piece.standardDeviationAmps(scale);
    double volts = piece.standardDeviationVolts(scale);
    double ripple = RIPPLE_SHARE * piece.meanAbsoluteVolts(scale);
    boolean loud = amps > MOST_AMPS || volts > Math.max(MOST_VOLTS, ripple);
    if (loud || volts <= MOST_VOLTS) {
      fault.look(loud, slot - pieceSlots + 1, slot);
    } else {
      fault.keep(slot);
    }
  }
}
