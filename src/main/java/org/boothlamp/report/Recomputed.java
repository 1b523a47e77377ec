package org.boothlamp.report;

import java.util.List;
import org.boothlamp.calibration.CalibrationRecord;

/**
 * That a report's figures are not those of the log, and what they rest on. Immutable.
 *
 * @param under the calibration they were computed again by
 * @param runs how many
 * @param notJudged of these, runs with windows whose levels cannot be told: AC, or no green left
 * @param zeroNotSeen of these, runs whose clamp's zero was not known and is taken from the
 *     calibration
 * @param otherHardware row numbers of runs left as they are, because the sensor's nominal scale was
 *     another
 */
public record Recomputed(
    CalibrationRecord under, int runs, int notJudged, int zeroNotSeen, List<Long> otherHardware) {

  static final String EXACT =
      "mean, RMS, mean power and energy of direct currents, from the stored ones: the scales are"
          + " straight lines";
  static final String APPROXIMATE =
      "means and power at AC, where the offset rests on the trace, and of a channel that changes its"
          + " direction within a run; levels, judged again on the trace of 20 Hz, by amps and volts"
          + " alone: each change of level may lie 0.1 s elsewhere";
  static final String NOT_RECOMPUTED =
      "excursions are left out; start, length, arc-outs, touches and short circuits stay as they were"
          + " recorded";

  public Recomputed {
    otherHardware = List.copyOf(otherHardware);
  }
}
