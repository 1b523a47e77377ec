package org.boothlamp.report;

import java.util.List;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * A run's heat input, how far it may be off, and where it lies against the procedure's limits.
 * Immutable.
 *
 * @param heat what the bead's length makes known
 * @param expandedKilojoulesPerMillimetre U of the heat input (coverage factor 2); NaN if it cannot
 *     be told
 * @param window the limits of heat input, kJ/mm; null if the procedure has none
 */
public record HeatVerdict(HeatInput heat, double expandedKilojoulesPerMillimetre, Window window) {

  /** Where a heat input lies. */
  public enum Place {
    /** The procedure limits no heat input, or the process is not known. */
    NOT_JUDGED("not judged"),
    INSIDE("inside"),
    BELOW("below"),
    ABOVE("above"),
    /** Nearer to a limit than U: inside or outside cannot be told. */
    TOO_NEAR("too near");

    private final String word;

    Place(String word) {
      this.word = word;
    }

    /** As answers spell it. */
    public String word() {
      return word;
    }
  }

  /**
   * Half the width of the rectangle in which the end of a bead is read on a ruler with millimetres,
   * mm: common practice, no source.
   */
  private static final double END_HALF_WIDTH_MM = 0.5;

  /**
   * U of a length between two such ends: 2 · √2 · a/√3 (standard uncertainty of a rectangle: JCGM
   * 100:2008 4.3.7, from memory).
   */
  static final double LENGTH_EXPANDED_MM = 2 * Math.sqrt(2) * END_HALF_WIDTH_MM / Math.sqrt(3);

  /** Flags of runs whose calibration says nothing certain of U. */
  private static final List<RunFlag> NO_UNCERTAINTY =
      List.of(RunFlag.UNCALIBRATED, RunFlag.CALIBRATION_WITHDRAWN, RunFlag.CALIBRATION_OVERDUE);

  /**
   * Judges a run.
   *
   * @param summary the run with its flags
   * @param history calibrations of its booth
   * @return null if its bead was not entered
   */
  public static HeatVerdict of(RunSummary summary, CalibrationHistory history) {
    RunRecord run = summary.run();
    HeatInput heat = run.heatInput();
    if (heat == null) {
      return null;
    }
    boolean sure = NO_UNCERTAINTY.stream().noneMatch(summary::has);
    double share = sure ? expandedShare(run, heat, history) : Double.NaN;
    return new HeatVerdict(
        heat,
        share * heat.heatInputKilojoulesPerMillimetre(),
        run.window(Quantity.HEAT_INPUT_KJ_PER_MM));
  }

  /**
   * Amps, volts and length are independent, and heat input is their product: shares add in squares.
   * k is a convention and has no uncertainty; that of the arc time is far below that of the length.
   */
  private static double expandedShare(RunRecord run, HeatInput heat, CalibrationHistory history) {
    double amps = expandedShare(run, Channel.CURRENT, run.amps(), history);
    double volts = expandedShare(run, Channel.VOLTAGE, run.volts(), history);
    double length = LENGTH_EXPANDED_MM / heat.beadMillimetres();
    return Math.sqrt(amps * amps + volts * volts + length * length);
  }

  private static double expandedShare(
      RunRecord run, Channel channel, double mean, CalibrationHistory history) {
    CalibrationRecord record = history.find(run.calibrations().of(channel));
    return record == null || !record.isAccepted()
        ? Double.NaN
        : record.finish().uncertainty().at(mean) / mean;
  }

  /** Where it lies; with U not known the value alone decides. */
  public Place place() {
    double value = heat.heatInputKilojoulesPerMillimetre();
    if (window == null || Double.isNaN(value)) {
      return Place.NOT_JUDGED;
    }
    double room = Math.min(Math.abs(value - window.low()), Math.abs(value - window.high()));
    if (room < expandedKilojoulesPerMillimetre) {
      return Place.TOO_NEAR;
    }
    if (value < window.low()) {
      return Place.BELOW;
    }
    return value > window.high() ? Place.ABOVE : Place.INSIDE;
  }
}
