package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.report.JsonLines;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;

/** Lists all calibrations of a booth. */
@Command(
    name = "list",
    header = "Lists all calibrations of the booth, and says which are in use.",
    description = {
      "Nothing is ever taken off the list: refused, abandoned and withdrawn calibrations stay in it."
          + " The latest is out of use if it was made for another nominal scale than the settings name"
          + " now; boothlamp check says both.",
      "",
      "Example:",
      "  boothlamp calibrate list --format json"
    })
final class CalibrateListCommand implements Callable<Integer> {

  private static final String ROW = "%4s  %-8s  %-10s  %-10s  %6s  %-10s  %s%n";

  private final Terminal terminal;
  private final ZoneId zone = ZoneId.systemDefault();
  private final Instant now = Instant.now();

  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  private BoothSettings settings;

  CalibrateListCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    settings = settingsOption.read();
    CalibrationHistory history = LogCalibrations.read(SettingsOption.logOf(settings));
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      writeJson(history, writer);
    } else {
      writeText(history, writer);
    }
    writer.flush();
    return ExitCode.OK;
  }

  private void writeText(CalibrationHistory history, PrintWriter writer) {
    if (history.records().isEmpty()) {
      writer.println("No calibration yet: the nominal scales and the stated accuracy hold.");
      return;
    }
    writer.printf(Locale.ROOT, ROW, "no.", "channel", "date", "by", "points", "due", "state");
    for (CalibrationRecord record : history.records()) {
      writer.printf(
          Locale.ROOT,
          ROW,
          record.number(),
          record.channel().word(),
          record.head().date(),
          record.head().technicianCode(),
          record.points().size(),
          due(record),
          stateInWords(history, record));
    }
  }

  private static String due(CalibrationRecord record) {
    return record.isAccepted() ? record.finish().nextDue().toString() : "";
  }

  private String stateInWords(CalibrationHistory history, CalibrationRecord record) {
    String state = state(history, record);
    if (record.withdrawal() != null) {
      return state
          + " from "
          + dayOf(record.withdrawal().fromWallMillis())
          + " on: "
          + record.withdrawal().reason();
    }
    return record.finish() == null || record.isAccepted()
        ? state
        : state + ": " + record.finish().note();
  }

  /**
   * One word or two: in use, overdue, out of use, superseded, withdrawn, refused, abandoned, under
   * way.
   */
  private String state(CalibrationHistory history, CalibrationRecord record) {
    if (record.isUnderWay()) {
      return "under way";
    }
    if (!record.isAccepted()) {
      return record.finish().ending().word();
    }
    if (record.withdrawal() != null) {
      return "withdrawn";
    }
    CalibrationRecord latest = history.inUse(record.channel(), now.toEpochMilli());
    if (latest == null || latest.number() != record.number()) {
      return "superseded";
    }
    if (LogCalibrations.inUse(settings, history, record.channel(), now.atZone(zone)) == null) {
      return "out of use";
    }
    return SensorInUse.isOverdue(record, LocalDate.ofInstant(now, zone)) ? "overdue" : "in use";
  }

  private LocalDate dayOf(long wallMillis) {
    return Instant.ofEpochMilli(wallMillis).atZone(zone).toLocalDate();
  }

  private void writeJson(CalibrationHistory history, PrintWriter writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    for (CalibrationRecord record : history.records()) {
      writeJson(history, record, lines);
    }
    lines.flush();
  }

  private void writeJson(CalibrationHistory history, CalibrationRecord record, JsonLines lines)
      throws IOException {
    lines.start("calibration").count("number", record.number());
    lines.text("channel", record.channel().word());
    lines.text("state", state(history, record));
    lines.text("date", record.head().date().toString());
    lines.text("technician", record.head().technicianCode());
    lines.count("points", record.points().size());
    long discarded = record.points().stream().filter(CalibrationPoint::isDiscarded).count();
    lines.count("discarded_points", discarded).text("due", due(record));
    writeUncertainty(record, lines);
    lines.text("note", record.finish() == null ? "" : record.finish().note());
    boolean withdrawn = record.withdrawal() != null;
    lines.text("withdrawn_from", withdrawn ? time(record.withdrawal().fromWallMillis()) : "");
    lines.text("withdrawn_by", withdrawn ? record.withdrawal().technicianCode() : "");
    lines.text("withdrawn_reason", withdrawn ? record.withdrawal().reason() : "").end();
  }

  private static void writeUncertainty(CalibrationRecord record, JsonLines lines)
      throws IOException {
    ExpandedUncertainty u = record.isAccepted() ? record.finish().uncertainty() : null;
    String unit = record.channel() == Channel.CURRENT ? "amps" : "volts";
    lines.number("uncertainty_constant_" + unit, u == null ? Double.NaN : u.constant());
    lines.number("uncertainty_share_of_reading", u == null ? Double.NaN : u.proportional());
  }

  private String time(long wallMillis) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
        Instant.ofEpochMilli(wallMillis).atZone(zone));
  }
}
