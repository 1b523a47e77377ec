package org.boothlamp.acquisition;

/**
 * The static curve of a drooping welding source: {@code i = shortAmps * (1 - (v / openVolts) ^
 * exponent)}. Exponent 1 is a straight line, 2 a parabola; the larger, the steeper at arc volts.
 *
 * <p>A table, made once: a power in every step of the simulation would cost more than the rest of
 * it. Straight between its points, so its slope stays finite at short circuit. Immutable.
 */
final class SimulatedDroop {

  private static final int CELLS = 512;

  private final double openVolts;
  private final double exponent;
  private final double[] voltsAt = new double[CELLS + 1];

  SimulatedDroop(double openVolts, double exponent) {
    this.openVolts = openVolts;
    this.exponent = exponent;
    for (int cell = 0; cell <= CELLS; cell++) {
      voltsAt[cell] = openVolts * Math.pow(1 - (double) cell / CELLS, 1 / exponent);
    }
  }

  double openVolts() {
    return openVolts;
  }

  /** Amps at the given volts, as a share of the short-circuit current. */
  double shareAt(double volts) {
    return 1 - Math.pow(volts / openVolts, exponent);
  }

  /** Volts at a share of the short-circuit current; open volts below 0, none above 1. */
  double volts(double share) {
    double place = share * CELLS;
    if (place <= 0) {
      return openVolts;
    }
    int cell = (int) place;
    return cell >= CELLS ? 0 : voltsAt[cell] + (place - cell) * (voltsAt[cell + 1] - voltsAt[cell]);
  }

  /** Volts lost per unit of that share, at least 0. */
  double slope(double share) {
    int cell = (int) (share * CELLS);
    return share <= 0 || cell >= CELLS ? 0 : (voltsAt[cell] - voltsAt[cell + 1]) * CELLS;
  }
}
