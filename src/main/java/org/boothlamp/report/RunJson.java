package org.boothlamp.report;

import java.io.IOException;

/** The fields of a run that a shift and a replay have in common. */
final class RunJson {

  private RunJson() {}

  /** Means, energy, polarity, counts and the seconds of each signal. */
  static void writeFigures(JsonLines lines, RunRecord run) throws IOException {
    lines.number("mean_amps", run.meanAmps()).number("mean_volts", run.meanVolts());
    lines.number("rms_amps", run.rmsAmps()).number("rms_volts", run.rmsVolts());
    lines.number("energy_j", run.energyJoules()).number("mean_power_w", run.meanWatts());
    lines.text("polarity", run.polarity().word());
    lines.countIfMeasured("short_circuits", run.shortCircuits());
    lines.count("arc_outs", run.arcOuts());
    lines.number("green_s", run.greenSeconds()).number("amber_s", run.amberSeconds());
    lines.number("red_s", run.redSeconds()).number("settling_s", run.settlingSeconds());
  }

  /**
   * The excursions one by one.
   *
   * @param originSeconds start of the run on the clock that the excursions are to be told by
   */
  static void writeExcursions(JsonLines lines, RunRecord run, double originSeconds)
      throws IOException {
    lines.startArray("excursions");
    for (ExcursionRecord excursion : run.excursions()) {
      double start = originSeconds + excursion.startSeconds();
      lines.startItem().text("quantity", excursion.quantity().key());
      lines.text("side", excursion.side().word()).number("start_s", start);
      lines.number("end_s", start + excursion.lengthSeconds());
      lines.number("worst", excursion.worst()).endItem();
    }
    lines.endArray();
  }

  /** What says how far the figures can be trusted. */
  static void writeExtras(JsonLines lines, RunRecord run) throws IOException {
    lines.number("fault_s", run.faultSeconds()).number("missing_s", run.missingSeconds());
    lines.truth("calibrated", run.calibrated()).text("end", run.end());
  }
}
