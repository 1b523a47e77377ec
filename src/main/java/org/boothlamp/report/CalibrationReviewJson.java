package org.boothlamp.report;

import java.io.IOException;
import java.util.List;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ExpandedUncertainty;

/** The lines of a report about calibrations. */
final class CalibrationReviewJson {

  private final ShiftReport report;
  private final JsonLines lines;

  CalibrationReviewJson(ShiftReport report, JsonLines lines) {
    this.report = report;
    this.lines = lines;
  }

  void write() throws IOException {
    for (CalibrationReview.ChannelState channel : report.calibrations().channels()) {
      writeState(channel);
    }
    for (CalibrationReview.Change change : report.calibrations().changes()) {
      lines.start("calibration_change").text("at", time(change.wallMillis()));
      lines.text("what", change.words()).end();
    }
    for (CalibrationReview.Use use : report.calibrations().uses()) {
      writeUse(use);
    }
    if (report.recomputed() != null) {
      writeRecomputed(report.recomputed());
    }
  }

  private void writeState(CalibrationReview.ChannelState channel) throws IOException {
    CalibrationRecord record = channel.record();
    lines.start("calibration");
    if (!channel.booth().isEmpty()) {
      lines.text("booth", channel.booth());
    }
    lines.text("channel", channel.channel().word());
    lines.text("state", channel.state().word());
    lines.countIfMeasured("number", record == null ? -1 : record.number());
    lines.text("date", record == null ? "" : record.head().date().toString());
    lines.text("due", record == null ? "" : record.finish().nextDue().toString()).end();
  }

  private void writeUse(CalibrationReview.Use use) throws IOException {
    CalibrationRecord record = use.record();
    lines.start("calibration_use").count("number", record.number());
    lines.text("channel", record.channel().word()).count("runs", use.runs());
    boolean withdrawn = record.withdrawal() != null;
    lines.text("withdrawn_from", withdrawn ? time(record.withdrawal().fromWallMillis()) : "");
    lines.text("withdrawn_reason", withdrawn ? record.withdrawal().reason() : "");
    writeRuns("withdrawn_runs", use.withdrawn());
    writeRuns("overdue_runs", use.overdue());
    lines.end();
  }

  private void writeRuns(String name, List<Long> ids) throws IOException {
    lines.startArray(name);
    for (long id : ids) {
      lines.item(id);
    }
    lines.endArray();
  }

  private void writeRecomputed(Recomputed recomputed) throws IOException {
    CalibrationRecord under = recomputed.under();
    ExpandedUncertainty u = under.finish().uncertainty();
    String unit = under.channel() == Channel.CURRENT ? "amps" : "volts";
    lines.start("recomputed").count("calibration", under.number());
    lines.text("channel", under.channel().word()).count("runs", recomputed.runs());
    lines.number("uncertainty_constant_" + unit, u.constant());
    lines.number("uncertainty_share_of_reading", u.proportional());
    lines.text("exact", Recomputed.EXACT).text("approximate", Recomputed.APPROXIMATE);
    lines.text("not_recomputed", Recomputed.NOT_RECOMPUTED);
    lines.count("not_judged", recomputed.notJudged());
    lines.count("zero_not_seen", recomputed.zeroNotSeen());
    writeRuns("left_as_measured", recomputed.otherHardware());
    lines.end();
  }

  private String time(long wallMillis) {
    return JsonReport.time(wallMillis, report.span());
  }
}
