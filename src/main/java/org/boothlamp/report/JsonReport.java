package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.function.LongFunction;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * A shift as JSON lines for programs: one {@code shift}; a {@code calibration} line per channel,
 * {@code calibration_change} and {@code calibration_use} lines, and one {@code recomputed} if the
 * figures are not those of the log; of each trainee a {@code trainee} line per pass and one for all
 * ({@code row} is {@code pass} or {@code total}); then {@code run}, {@code touch} and {@code event}
 * lines, each kind in order of time, and then likewise of each start of the monitor whose clock was
 * never set ({@code time_known} is false). Times are seconds, shares 0 to 1, what is not known is
 * null.
 */
public final class JsonReport {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  private static final long TIMED = 0;

  private final ShiftReport report;
  private final JsonLines lines;
  private final LongFunction<String> recordings;

  /** Number of the start whose times of day are not known, while its lines are written. */
  private long untimedStart = TIMED;

  private JsonReport(ShiftReport report, LongFunction<String> recordings, JsonLines lines) {
    this.report = report;
    this.recordings = recordings;
    this.lines = lines;
  }

  /**
   * Writes the report and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(ShiftReport report, Writer writer) throws IOException {
    write(report, id -> "", writer);
  }

  /**
   * The same, with the name of each run's raw recording.
   *
   * @param recordings name by the run's id; empty where there is none
   */
  public static void write(ShiftReport report, LongFunction<String> recordings, Writer writer)
      throws IOException {
    JsonLines lines = new JsonLines(writer);
    new JsonReport(report, recordings, lines).writeAll();
    lines.flush();
  }

  private void writeAll() throws IOException {
    writeShift();
    new CalibrationReviewJson(report, lines).write();
    for (TraineeSummary trainee : report.trainees()) {
      writeTrainee(trainee);
    }
    for (RunSummary summary : report.runs()) {
      writeRun(summary);
    }
    for (TouchRecord touch : report.touches()) {
      writeTouch(touch);
    }
    for (EventRecord event : report.events()) {
      writeEvent(event);
    }
    for (UntimedSummary start : report.untimed()) {
      writeUntimed(start);
    }
  }

  /** Times of day that mean nothing are left out. */
  private void writeUntimed(UntimedSummary start) throws IOException {
    untimedStart = start.number();
    for (RunSummary summary : start.runs()) {
      writeRun(summary);
    }
    for (TouchRecord touch : start.touches()) {
      writeTouch(touch);
    }
    for (EventRecord event : start.events()) {
      writeEvent(event);
    }
    untimedStart = TIMED;
  }

  private void writeShift() throws IOException {
    lines.start("shift").text("booth", report.booth()).text("title", report.title());
    lines.text("from", time(report.span().fromWallMillis()));
    lines.text("until", time(report.span().untilWallMillis()));
    lines.text("zone", report.span().zone().getId()).count("trainees", report.traineeCount());
    writeFigures(report.total());
    lines.count("touches", report.touchCount()).count("stuck", report.stuckCount()).end();
  }

  private void writeTrainee(TraineeSummary trainee) throws IOException {
    for (PassSummary pass : trainee.passes()) {
      lines.start("trainee").text("trainee", trainee.trainee()).text("row", "pass");
      writePass(pass.pass());
      writeMeans(pass);
      writeFigures(pass.figures());
      lines.end();
    }
    lines.start("trainee").text("trainee", trainee.trainee()).text("row", "total");
    writeFigures(trainee.total());
    lines.count("touches", trainee.touches()).count("stuck", trainee.stuck()).end();
  }

  private void writePass(PassKey pass) throws IOException {
    lines.text("procedure", pass.procedureId()).text("revision", pass.revision());
    lines.text("pass", pass.pass());
  }

  private void writeMeans(PassSummary summary) throws IOException {
    Window amps = summary.pass().window(Quantity.AMPS);
    Window volts = summary.pass().window(Quantity.VOLTS);
    lines.number("mean_amps", summary.figures().meanAmps());
    lines.number("amps_low", low(amps)).number("amps_high", high(amps));
    lines.number("mean_volts", summary.figures().meanVolts());
    lines.number("volts_low", low(volts)).number("volts_high", high(volts));
  }

  private static double low(Window window) {
    return window == null ? Double.NaN : window.low();
  }

  private static double high(Window window) {
    return window == null ? Double.NaN : window.high();
  }

  private void writeFigures(Figures figures) throws IOException {
    lines.count("runs", figures.runs()).number("arc_s", figures.arcSeconds());
    lines.number("judged_s", figures.judgedSeconds());
    lines.number("in_window_s", figures.insideSeconds());
    lines.number("in_window_share", figures.insideShare());
    lines.number("green_s", figures.greenSeconds()).number("amber_s", figures.amberSeconds());
    lines.number("red_s", figures.redSeconds()).number("settling_s", figures.settlingSeconds());
    lines.number("fault_s", figures.faultSeconds());
    lines.number("missing_s", figures.missingSeconds());
    lines.number("energy_j", figures.energyJoules()).count("arc_outs", figures.arcOuts());
    writeTallies(figures.excursions());
  }

  private void writeTallies(List<ExcursionTally> tallies) throws IOException {
    lines.startArray("excursions");
    for (ExcursionTally tally : tallies) {
      lines.startItem().text("quantity", tally.quantity().key());
      lines.text("side", tally.side().word()).count("count", tally.count());
      lines.number("total_s", tally.seconds()).number("worst", tally.worst()).endItem();
    }
    lines.endArray();
  }

  private void writeRun(RunSummary summary) throws IOException {
    RunRecord run = summary.run();
    PassKey pass = PassKey.of(run);
    lines.start("run").count("id", run.id()).text("booth", run.booth());
    lines.text("trainee", run.trainee());
    writePass(pass);
    lines.text("process", run.process());
    writeStart(run.startWallMillis());
    lines.number("arc_s", run.lengthSeconds());
    RunJson.writeFigures(lines, run);
    lines.number("judged_s", run.judgedSeconds()).number("in_window_s", run.insideSeconds());
    lines.number("in_window_share", run.insideShare());
    RunJson.writeExcursions(lines, run, 0);
    RunJson.writeExtras(lines, run);
    lines.number("short_circuits_per_s", run.shortCircuitsPerSecond());
    lines.countIfMeasured("current_calibration", numberOrNone(run.calibrations().current()));
    lines.countIfMeasured("voltage_calibration", numberOrNone(run.calibrations().voltage()));
    lines.text("recording", recordings.apply(run.id()));
    writeWindows(pass);
    BeadJson.writeNotes(lines, run);
    lines.startArray("flags");
    for (RunFlag flag : summary.flags()) {
      lines.item(flag.word());
    }
    lines.endArray().end();
  }

  /** Null for the nominal scale. */
  private static long numberOrNone(long number) {
    return number == 0 ? -1 : number;
  }

  private void writeWindows(PassKey pass) throws IOException {
    lines.startArray("windows");
    for (Window window : pass.windows()) {
      lines.startItem().text("quantity", window.quantity().key());
      lines.number("low", window.low()).number("high", window.high()).endItem();
    }
    lines.endArray();
  }

  private void writeTouch(TouchRecord touch) throws IOException {
    lines.start("touch").text("trainee", touch.trainee());
    writeStart(touch.startWallMillis());
    lines.number("length_s", touch.lengthSeconds()).truth("stuck", touch.stuck()).end();
  }

  private void writeEvent(EventRecord event) throws IOException {
    lines.start("event").text("what", event.what()).truth("fault", event.fault());
    writeStart(event.startWallMillis());
    lines.number("length_s", event.lengthSeconds()).count("count", event.count());
    lines.text("detail", event.detail()).end();
  }

  private void writeStart(long wallMillis) throws IOException {
    boolean known = untimedStart == TIMED;
    lines.text("start", known ? time(wallMillis) : "").truth("time_known", known);
    if (!known) {
      lines.count("monitor_start", untimedStart);
    }
  }

  private String time(long wallMillis) {
    return time(wallMillis, report.span());
  }

  static String time(long wallMillis, ShiftSpan span) {
    return TIME.format(span.local(wallMillis));
  }
}
