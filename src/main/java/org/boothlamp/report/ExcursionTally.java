package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;

/**
 * All excursions of one quantity to one side. Immutable.
 *
 * @param quantity which average
 * @param side below or above
 * @param count how many, at least 1
 * @param seconds their lengths together
 * @param worst the average farthest out, in the quantity's unit
 */
public record ExcursionTally(
    Quantity quantity, Side side, int count, double seconds, double worst) {

  /** This tally with one excursion of the same quantity and side more. */
  private ExcursionTally plus(ExcursionRecord one) {
    return new ExcursionTally(
        quantity, side, count + 1, seconds + one.lengthSeconds(), farther(one.worst()));
  }

  private double farther(double other) {
    return side == Side.LOW ? Math.min(worst, other) : Math.max(worst, other);
  }

  /** Excursions by quantity, then low before high; sides that were never left are left out. */
  static List<ExcursionTally> of(List<ExcursionRecord> excursions) {
    if (excursions.isEmpty()) {
      return List.of();
    }
    Adder adder = new Adder();
    adder.add(excursions);
    return adder.tallies();
  }

  /** Gathers excursions. Confined to one thread. */
  static final class Adder {

    private static final int SIDES = Side.values().length;

    private final ExcursionTally[] tallies = new ExcursionTally[Quantity.values().length * SIDES];

    void add(List<ExcursionRecord> excursions) {
      for (ExcursionRecord one : excursions) {
        int place = one.quantity().ordinal() * SIDES + one.side().ordinal();
        tallies[place] = tallies[place] == null ? first(one) : tallies[place].plus(one);
      }
    }

    private static ExcursionTally first(ExcursionRecord one) {
      return new ExcursionTally(one.quantity(), one.side(), 1, one.lengthSeconds(), one.worst());
    }

    List<ExcursionTally> tallies() {
      List<ExcursionTally> found = new ArrayList<>(2);
      for (ExcursionTally tally : tallies) {
        if (tally != null) {
          found.add(tally);
        }
      }
      return List.copyOf(found);
    }
  }
}
