package org.boothlamp.report;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/**
 * A calibrated 10 s stick run of T-04 that nothing is wrong with, to be changed as a test needs.
 */
final class RunBuilder {

  static final List<Window> FILL_WINDOWS =
      List.of(new Window(Quantity.AMPS, 95, 125), new Window(Quantity.VOLTS, 20, 26));

  private final List<ExcursionRecord> excursions = new ArrayList<>();
  private long id = 1;
  private String trainee = "T-04";
  private String procedureId = "S-3F-18";
  private String revision = "2";
  private String pass = "fill";
  private List<Window> windows = FILL_WINDOWS;
  private long startWallMillis;
  private double startSeconds;
  private double lengthSeconds = 10;
  private double amps = 110;
  private double volts = 22;
  private double rmsAmps = 111;
  private double rmsVolts = 23;
  private double energyJoules = 24_200;
  private Polarity polarity = Polarity.DC_PLUS;
  private long shortCircuits = 40;
  private int arcOuts;
  private double greenSeconds = 9;
  private double amberSeconds;
  private double redSeconds;
  private double settlingSeconds = 1;
  private double faultSeconds;
  private double missingSeconds;
  private CalibrationNumbers calibrations = CalibrationNumbers.NONE;
  private boolean calibrated = true;
  private String end = "arc off";
  private RunNotes notes = RunNotes.NONE;

  static RunBuilder run() {
    return new RunBuilder();
  }

  RunBuilder id(long value) {
    id = value;
    return this;
  }

  RunBuilder trainee(String code) {
    trainee = code;
    return this;
  }

  RunBuilder pass(String procedure, String rev, String name, Window... limits) {
    procedureId = procedure;
    revision = rev;
    pass = name;
    windows = List.of(limits);
    return this;
  }

  RunBuilder noProcedure() {
    return pass("", "", "").levels(0, 0, 0, lengthSeconds);
  }

  RunBuilder at(ZonedDateTime start) {
    startWallMillis = start.toInstant().toEpochMilli();
    return this;
  }

  RunBuilder startSeconds(double seconds) {
    startSeconds = seconds;
    return this;
  }

  RunBuilder length(double seconds) {
    lengthSeconds = seconds;
    return this;
  }

  RunBuilder means(double meanAmps, double meanVolts) {
    amps = meanAmps;
    volts = meanVolts;
    return this;
  }

  RunBuilder alternating(double ampsRms, double voltsRms) {
    polarity = Polarity.AC;
    rmsAmps = ampsRms;
    rmsVolts = voltsRms;
    return this;
  }

  RunBuilder energy(double joules) {
    energyJoules = joules;
    return this;
  }

  RunBuilder shortCircuits(long count) {
    shortCircuits = count;
    return this;
  }

  RunBuilder arcOuts(int count) {
    arcOuts = count;
    return this;
  }

  RunBuilder levels(double green, double amber, double red, double settling) {
    greenSeconds = green;
    amberSeconds = amber;
    redSeconds = red;
    settlingSeconds = settling;
    return this;
  }

  RunBuilder fault(double seconds) {
    faultSeconds = seconds;
    return this;
  }

  RunBuilder missing(double seconds) {
    missingSeconds = seconds;
    return this;
  }

  RunBuilder uncalibrated() {
    calibrated = false;
    return this;
  }

  RunBuilder calibrations(long current, long voltage) {
    calibrations = new CalibrationNumbers(current, voltage);
    return this;
  }

  RunBuilder end(String word) {
    end = word;
    return this;
  }

  RunBuilder excursion(Quantity quantity, Side side, double start, double seconds, double worst) {
    excursions.add(new ExcursionRecord(quantity, side, start, seconds, worst));
    return this;
  }

  RunBuilder bead(double millimetres, String note) {
    EnteredBead bead =
        new EnteredBead(millimetres, startWallMillis + 60_000, EnteredBy.NOT_SAID, note);
    notes = new RunNotes(bead, notes.reference());
    return this;
  }

  RunBuilder reference(String words) {
    ReferenceWeld mark = new ReferenceWeld(startWallMillis + 60_000, EnteredBy.INSTRUCTOR, words);
    notes = new RunNotes(notes.bead(), mark);
    return this;
  }

  RunRecord build() {
    return new RunRecord(
        id,
        "B-07",
        trainee,
        procedureId,
        revision,
        pass,
        procedureId.isEmpty() ? "" : "111",
        windows,
        startWallMillis,
        startSeconds,
        lengthSeconds,
        amps,
        volts,
        rmsAmps,
        rmsVolts,
        energyJoules,
        energyJoules / lengthSeconds,
        polarity,
        shortCircuits,
        arcOuts,
        greenSeconds,
        amberSeconds,
        redSeconds,
        settlingSeconds,
        faultSeconds,
        missingSeconds,
        calibrated,
        calibrations,
        end,
        excursions,
        notes);
  }
}
