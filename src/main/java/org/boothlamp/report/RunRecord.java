package org.boothlamp.report;

import java.util.List;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/**
 * One finished (or saved) segment as the log holds it. Immutable.
 *
 * @param id row number in the log
 * @param booth booth id
 * @param trainee trainee code; empty if nobody had signed in
 * @param procedureId procedure, or empty if none was loaded
 * @param procedureRevision its revision, or empty
 * @param pass pass name, or empty
 * @param process ISO 4063 number, or empty
 * @param windows the limits it was judged by; empty if none
 * @param startWallMillis time of day at the start, ms since the epoch
 * @param startSeconds start, seconds since the source's first pair
 * @param lengthSeconds length, arc-outs inside
 * @param meanAmps mean of the absolute current
 * @param meanVolts mean of the absolute voltage
 * @param rmsAmps RMS current
 * @param rmsVolts RMS voltage
 * @param energyJoules arc energy
 * @param meanWatts mean of v·i
 * @param polarity kind of current measured
 * @param shortCircuits how many, or -1 if not measured
 * @param arcOuts interruptions bridged
 * @param greenSeconds time judged green
 * @param amberSeconds time judged amber
 * @param redSeconds time judged red
 * @param settlingSeconds time not judged
 * @param faultSeconds time under a fault
 * @param missingSeconds time inside for which nothing was measured
 * @param calibrated true if both sensors had a calibration
 * @param calibrations which ones
 * @param end why it ended, in words
 * @param excursions in order of time
 * @param notes what people said of it afterwards
 */
public record RunRecord(
    long id,
    String booth,
    String trainee,
    String procedureId,
    String procedureRevision,
    String pass,
    String process,
    List<Window> windows,
    long startWallMillis,
    double startSeconds,
    double lengthSeconds,
    double meanAmps,
    double meanVolts,
    double rmsAmps,
    double rmsVolts,
    double energyJoules,
    double meanWatts,
    Polarity polarity,
    long shortCircuits,
    int arcOuts,
    double greenSeconds,
    double amberSeconds,
    double redSeconds,
    double settlingSeconds,
    double faultSeconds,
    double missingSeconds,
    boolean calibrated,
    CalibrationNumbers calibrations,
    String end,
    List<ExcursionRecord> excursions,
    RunNotes notes) {

  public RunRecord {
    windows = List.copyOf(windows);
    excursions = List.copyOf(excursions);
  }

  /** The same run with other times of each level, s. */
  RunRecord withLevels(double green, double amber, double red, double settling, double fault) {
    return new RunRecord(
        id,
        booth,
        trainee,
        procedureId,
        procedureRevision,
        pass,
        process,
        windows,
        startWallMillis,
        startSeconds,
        lengthSeconds,
        meanAmps,
        meanVolts,
        rmsAmps,
        rmsVolts,
        energyJoules,
        meanWatts,
        polarity,
        shortCircuits,
        arcOuts,
        green,
        amber,
        red,
        settling,
        fault,
        missingSeconds,
        calibrated,
        calibrations,
        end,
        excursions,
        notes);
  }

  /** What the bead's length makes known; null if it, or the arc time, is not known. */
  public HeatInput heatInput() {
    return notes.bead() == null || !(lengthSeconds > 0)
        ? null
        : HeatInput.of(
            Process.ofNumber(process),
            energyJoules,
            lengthSeconds,
            notes.bead().lengthMillimetres());
  }

  /** The window of a quantity, or null if it was not limited. */
  public Window window(Quantity quantity) {
    for (Window window : windows) {
      if (window.quantity() == quantity) {
        return window;
      }
    }
    return null;
  }

  /** Time that was judged at all, s. */
  public double judgedSeconds() {
    return greenSeconds + amberSeconds + redSeconds;
  }

  /** Time inside the window (green and amber), s. */
  public double insideSeconds() {
    return greenSeconds + amberSeconds;
  }

  /** Share of the judged time inside the window, 0 to 1; NaN if nothing was judged. */
  public double insideShare() {
    return insideSeconds() / judgedSeconds();
  }

  /** Time for which pairs arrived, s: what the means stand for. */
  public double measuredSeconds() {
    return lengthSeconds - missingSeconds;
  }

  /** The amps that are held against a window: the mean of a direct, the RMS of an AC current. */
  public double amps() {
    return polarity == Polarity.AC ? rmsAmps : meanAmps;
  }

  /** The volts that are held against a window: mean at direct current, RMS at AC. */
  public double volts() {
    return polarity == Polarity.AC ? rmsVolts : meanVolts;
  }

  /** Short circuits a second of measured time; NaN if not measured. */
  public double shortCircuitsPerSecond() {
    return shortCircuits < 0 || measuredSeconds() <= 0
        ? Double.NaN
        : shortCircuits / measuredSeconds();
  }
}
