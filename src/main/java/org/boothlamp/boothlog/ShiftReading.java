package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.TouchRecord;

/**
 * One reading of a span of time: a fixed number of queries whatever the span, each along an index.
 * To be run inside one transaction, so that all lists show the same moment. Confined to one thread.
 */
final class ShiftReading {

  /** The end of a segment that has none yet. */
  static final String STILL_RUNNING = "running";

  private static final String IN_SPAN = " WHERE s.start_wall_ms >= ? AND s.start_wall_ms < ?";
  private static final String IN_ORDER = " ORDER BY s.start_wall_ms, s.id";

  private static final String RUNS =
      "SELECT id, boot, trainee, procedure_id, procedure_revision, pass, process, start_wall_ms,"
          + " start_s, length_s, mean_amps, mean_volts, rms_amps, rms_volts, energy_j, mean_w, "
          + StoredWords.POLARITIES.place()
          + ", short_circuits, arc_outs, green_s, amber_s, red_s, settling_s, fault_s,"
          + " missing_s, calibrated, ifnull(current_calibration, 0),"
          + " ifnull(voltage_calibration, 0), end_word FROM segment s"
          + IN_SPAN
          + IN_ORDER;
  // CROSS JOIN keeps the segments outside, so that the rows come in their order without sorting.
  private static final String WINDOWS =
      "SELECT s.id, "
          + StoredWords.QUANTITIES.place()
          + ", w.low, w.high FROM segment s CROSS JOIN segment_window w ON w.segment_id = s.id"
          + IN_SPAN
          + IN_ORDER
          + ", w.number";
  private static final String EXCURSIONS =
      "SELECT s.id, "
          + StoredWords.QUANTITIES.place()
          + ", "
          + StoredWords.SIDES.place()
          + ", e.start_s, e.length_s, e.worst FROM segment s CROSS JOIN excursion e ON e.segment_id = s.id"
          + IN_SPAN
          + IN_ORDER
          + ", e.number";
  private static final String BEADS =
      "SELECT s.id, b.length_mm, b.wall_ms, b.entered_by, b.note"
          + " FROM segment s CROSS JOIN bead b ON b.segment_id = s.id"
          + IN_SPAN
          + IN_ORDER
          + ", b.id";
  private static final String REFERENCES =
      "SELECT s.id, r.marked, r.wall_ms, r.entered_by, r.words"
          + " FROM segment s CROSS JOIN reference_weld r ON r.segment_id = s.id"
          + IN_SPAN
          + IN_ORDER
          + ", r.id";
  private static final String TOUCHES =
      "SELECT trainee, start_wall_ms, start_s, length_s, stuck FROM touch s" + IN_SPAN + IN_ORDER;
  private static final String EVENTS =
      "SELECT word, fault, start_wall_ms, start_s, length_s, count, detail FROM event s"
          + IN_SPAN
          + IN_ORDER;

  private final LogConnection log;
  private final long fromWallMillis;
  private final long untilWallMillis;

  ShiftReading(LogConnection log, long fromWallMillis, long untilWallMillis) {
    this.log = log;
    this.fromWallMillis = fromWallMillis;
    this.untilWallMillis = untilWallMillis;
  }

  ShiftRecords read() throws SQLException {
    return new ShiftRecords(runs(), touches(), events());
  }

  private Columns rows(String sql) throws SQLException {
    return log.bind(sql).whole(fromWallMillis).whole(untilWallMillis).rows();
  }

  private List<RunRecord> runs() throws SQLException {
    Map<Long, String> booths = booths();
    List<RunRecord> runs = new ArrayList<>();
    try (Columns row = rows(RUNS);
        SegmentChildren<Window> windows =
            new SegmentChildren<>(rows(WINDOWS), ShiftReading::window);
        SegmentChildren<ExcursionRecord> excursions =
            new SegmentChildren<>(rows(EXCURSIONS), ShiftReading::excursion);
        RunNotesReading notes = new RunNotesReading(rows(BEADS), rows(REFERENCES))) {
      while (row.next()) {
        runs.add(run(row, booths, windows, excursions, notes));
      }
    }
    return runs;
  }

  private Map<Long, String> booths() throws SQLException {
    Map<Long, String> booths = new HashMap<>();
    try (Columns row = log.bind("SELECT id, booth FROM boot").rows()) {
      while (row.next()) {
        booths.put(row.whole(), row.text());
      }
    }
    return booths;
  }

  /** Arguments are taken in the order of the columns, which is that of the record. */
  private static RunRecord run(
      Columns row,
      Map<Long, String> booths,
      SegmentChildren<Window> windows,
      SegmentChildren<ExcursionRecord> excursions,
      RunNotesReading notes)
      throws SQLException {
    long id = row.whole();
    return new RunRecord(
        id,
        booths.get(row.whole()),
        row.text(),
        row.text(),
        row.text(),
        row.text(),
        row.text(),
        windows.of(id),
        row.whole(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        StoredWords.POLARITIES.of(row),
        row.whole(),
        (int) row.whole(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.flag(),
        new CalibrationNumbers(row.whole(), row.whole()),
        endWord(row.text()),
        excursions.of(id),
        notes.of(id));
  }

  private static String endWord(String stored) {
    return stored == null ? STILL_RUNNING : stored;
  }

  private static Window window(Columns row) throws SQLException {
    return new Window(StoredWords.QUANTITIES.of(row), row.real(), row.real());
  }

  private static ExcursionRecord excursion(Columns row) throws SQLException {
    return new ExcursionRecord(
        StoredWords.QUANTITIES.of(row),
        StoredWords.SIDES.of(row),
        row.real(),
        row.real(),
        row.real());
  }

  private List<TouchRecord> touches() throws SQLException {
    List<TouchRecord> touches = new ArrayList<>();
    try (Columns row = rows(TOUCHES)) {
      while (row.next()) {
        touches.add(new TouchRecord(row.text(), row.whole(), row.real(), row.real(), row.flag()));
      }
    }
    return touches;
  }

  List<EventRecord> events() throws SQLException {
    List<EventRecord> events = new ArrayList<>();
    try (Columns row = rows(EVENTS)) {
      while (row.next()) {
        events.add(
            new EventRecord(
                row.text(),
                row.flag(),
                row.whole(),
                row.real(),
                row.real(),
                row.whole(),
                row.text()));
      }
    }
    return events;
  }
}
