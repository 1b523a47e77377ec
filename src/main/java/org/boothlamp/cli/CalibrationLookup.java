package org.boothlamp.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.report.CalibrationSheet;

/** Finds one calibration in the booth's log. */
final class CalibrationLookup {

  private CalibrationLookup() {}

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
