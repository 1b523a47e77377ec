package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.BoothHistories.OneLog;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;

/** Reads which booth each calibration of a collected log is of. Pure functions. */
final class CollectedCalibrations {

  /** The latest start of a log comes last. */
  private static final String STARTS =
      "SELECT r.log, b.booth, b.started_wall_ms FROM collected_row r JOIN boot b ON b.id = r.id"
          + " WHERE r.table_name = 'boot' ORDER BY r.original_id";

  private static final String LOG_OF =
      "SELECT id, log FROM collected_row WHERE table_name = 'calibration'";

  private CollectedCalibrations() {}

  static BoothHistories read(LogConnection log) throws SQLException {
    Map<String, List<CalibrationRecord>> records = recordsByLog(log);
    Map<String, OneLog> logs = new LinkedHashMap<>();
    records.forEach((identity, of) -> logs.put(identity, neverStarted(of)));
    try (Columns row = log.bind(STARTS).rows()) {
      while (row.next()) {
        String identity = row.text();
        CalibrationHistory history =
            new CalibrationHistory(records.getOrDefault(identity, List.of()));
        logs.put(identity, new OneLog(row.text(), row.whole(), history));
      }
    }
    return BoothHistories.of(List.copyOf(logs.values()));
  }

  /** A booth can be calibrated before a monitor ever ran in it. */
  private static OneLog neverStarted(List<CalibrationRecord> records) {
    CalibrationHead first = records.get(0).head();
    return new OneLog(first.booth(), first.startedWallMillis(), new CalibrationHistory(records));
  }

  private static Map<String, List<CalibrationRecord>> recordsByLog(LogConnection log)
      throws SQLException {
    Map<Long, String> logOf = new HashMap<>();
    try (Columns row = log.bind(LOG_OF).rows()) {
      while (row.next()) {
        logOf.put(row.whole(), row.text());
      }
    }
    Map<String, List<CalibrationRecord>> records = new HashMap<>();
    for (CalibrationRecord record : CalibrationReading.history(log).records()) {
      records.computeIfAbsent(logOf.get(record.number()), of -> new ArrayList<>()).add(record);
    }
    return records;
  }
}
