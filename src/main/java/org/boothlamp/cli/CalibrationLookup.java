package org.boothlamp.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.report.CalibrationSheet;
import org.boothlamp.settings.BoothSettings;

/** Finds one calibration in the booth's log. */
final class CalibrationLookup {

  private CalibrationLookup() {}

  /**
   * The booth's book, to look into; never makes a log where there is none.
   *
   * @throws PartsException if there is no log
   */
  static CalibrationBook open(Parts parts, BoothSettings settings) {
    Path log = SettingsOption.logOf(settings);
    if (!Files.exists(log)) {
      throw new PartsException("there is no log " + log + " yet: " + existing(List.of()), null);
    }
    return parts.calibrationBook(settings);
  }

  /**
   * The sheet of a calibration, with the checks of its channel.
   *
   * @throws PartsException if the log has no such number
   */
  static CalibrationSheet sheet(CalibrationBook book, long number) {
    CalibrationHistory history = book.history();
    CalibrationRecord record = history.find(number);
    if (record == null) {
      throw new PartsException(
          "there is no calibration " + number + "; " + existing(history.records()), null);
    }
    ZoneId zone = ZoneId.systemDefault();
    return new CalibrationSheet(record, book.checks(record.channel()), zone, LocalDate.now(zone));
  }

  private static String existing(List<CalibrationRecord> records) {
    if (records.isEmpty()) {
      return "the booth was never calibrated; see: boothlamp calibrate --help";
    }
    return "the log has "
        + (records.size() == 1
            ? "only " + records.get(0).number()
            : records.get(0).number() + " to " + records.get(records.size() - 1).number());
  }
}
