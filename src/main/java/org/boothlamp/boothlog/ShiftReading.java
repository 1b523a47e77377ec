package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.TouchRecord;
import org.boothlamp.report.UntimedStart;

/**
 * One reading of a span of time: a fixed number of queries whatever the span, each along an index,
 * and as many for each start whose clock was never set. To be run inside one transaction, so that
 * all lists show the same moment. Confined to one thread.
 */
final class ShiftReading {

  /** The end of a segment that has none yet. */
  static final String STILL_RUNNING = "running";

  /** What a damaged log may lack is said in the reports of all days before. */
  private static final String LATER_SALVAGE =
      " WHERE s.word IN ('log damaged', 'log salvaged') AND s.start_wall_ms >= ?";

  /** Rows to read and their order; {@code s} is the table of what began at some time. */
  private record Selection(String where, String order, long... values) {

    private static final String BY_TIME = " ORDER BY s.start_wall_ms, s.id";

    /** What began in a span of time, as far as that is known. */
    static Selection inSpan(long from, long until, boolean someUntimed) {
      String timed =
          someUntimed ? " AND s.boot IN (SELECT id FROM boot WHERE clock_trusted = 1)" : "";
      return new Selection(
          " WHERE s.start_wall_ms >= ? AND s.start_wall_ms < ?" + timed, BY_TIME, from, until);
    }

    /** All of one start, in the order of its monotonic clock. */
    static Selection ofBoot(long boot) {
      return new Selection(" WHERE s.boot = ?", " ORDER BY s.start_mono_ns, s.id", boot);
    }

    Columns rows(LogConnection log, String select, String furtherOrder) throws SQLException {
      Binding binding = log.bind(select + where + order + furtherOrder);
      for (long value : values) {
        binding.whole(value);
      }
      return binding.rows();
    }
  }

  private static final String RUNS =
      "SELECT id, boot, trainee, procedure_id, procedure_revision, pass, process, start_wall_ms,"
          + " start_s, length_s, mean_amps, mean_volts, rms_amps, rms_volts, energy_j, mean_w, "
          + StoredWords.POLARITIES.place()
          + ", short_circuits, arc_outs, green_s, amber_s, red_s, settling_s, fault_s,"
          + " missing_s, calibrated, ifnull(current_calibration, 0),"
          + " ifnull(voltage_calibration, 0), end_word FROM segment s";
  // CROSS JOIN keeps the segments outside, so that the rows come in their order without sorting.
  private static final String WINDOWS =
      "SELECT s.id, "
          + StoredWords.QUANTITIES.place()
          + ", w.low, w.high FROM segment s CROSS JOIN segment_window w ON w.segment_id = s.id";
  private static final String EXCURSIONS =
      "SELECT s.id, "
          + StoredWords.QUANTITIES.place()
          + ", "
          + StoredWords.SIDES.place()
          + ", e.start_s, e.length_s, e.worst FROM segment s CROSS JOIN excursion e ON e.segment_id = s.id";
  private static final String BEADS =
      "SELECT s.id, b.length_mm, b.wall_ms, b.entered_by, b.note"
          + " FROM segment s CROSS JOIN bead b ON b.segment_id = s.id";
  private static final String REFERENCES =
      "SELECT s.id, r.marked, r.wall_ms, r.entered_by, r.words"
          + " FROM segment s CROSS JOIN reference_weld r ON r.segment_id = s.id";
  private static final String TOUCHES =
      "SELECT trainee, start_wall_ms, start_s, length_s, stuck FROM touch s";
  private static final String EVENTS =
      "SELECT word, fault, start_wall_ms, start_s, length_s, count, detail FROM event s";

  private static final String UNTIMED_START =
      "SELECT b.id FROM segment s JOIN boot b ON b.id = s.boot"
          + " WHERE s.id = ? AND b.clock_trusted = 0";

  private final LogConnection log;
  private final long fromWallMillis;
  private final long untilWallMillis;
  private Map<Long, String> booths;

  ShiftReading(LogConnection log, long fromWallMillis, long untilWallMillis) {
    this.log = log;
    this.fromWallMillis = fromWallMillis;
    this.untilWallMillis = untilWallMillis;
  }

  /** One run of whatever time; null if there is no such segment. */
  static RunRecord run(LogConnection log, long id) throws SQLException {
    ShiftReading reading = new ShiftReading(log, 0, 0);
    reading.booths = new BootTimes(log).booths();
    List<RunRecord> found = reading.runs(new Selection(" WHERE s.id = ?", Selection.BY_TIME, id));
    return found.isEmpty() ? null : found.get(0);
  }

  /** One segment alone, with the events that happened while it was welded. */
  static ShiftRecords around(LogConnection log, RunRecord run) throws SQLException {
    long start = run.startWallMillis();
    ShiftReading reading =
        new ShiftReading(log, start, start + 1 + (long) (1_000 * run.lengthSeconds()));
    try (Columns row = log.bind(UNTIMED_START).whole(run.id()).rows()) {
      if (row.next()) {
        long boot = row.whole();
        List<EventRecord> events = reading.events(Selection.ofBoot(boot));
        ShiftRecords alone = new ShiftRecords(List.of(run), List.of(), events);
        return new ShiftRecords(
            List.of(), List.of(), List.of(), List.of(new UntimedStart(boot, alone)));
      }
    }
    return new ShiftRecords(List.of(run), List.of(), reading.read().events());
  }

  ShiftRecords read() throws SQLException {
    BootTimes times = new BootTimes(log);
    booths = times.booths();
    Selection span = Selection.inSpan(fromWallMillis, untilWallMillis, times.hasUntimed());
    List<EventRecord> events = events(span);
    events.addAll(events(new Selection(LATER_SALVAGE, Selection.BY_TIME, untilWallMillis)));
    return new ShiftRecords(runs(span), touches(span), events, untimed(times));
  }

  private List<UntimedStart> untimed(BootTimes times) throws SQLException {
    List<UntimedStart> untimed = new ArrayList<>();
    for (long boot : times.untimedIn(fromWallMillis, untilWallMillis)) {
      Selection all = Selection.ofBoot(boot);
      untimed.add(new UntimedStart(boot, new ShiftRecords(runs(all), touches(all), events(all))));
    }
    return untimed;
  }

  private List<RunRecord> runs(Selection which) throws SQLException {
    List<RunRecord> runs = new ArrayList<>();
    try (Columns row = which.rows(log, RUNS, "");
        SegmentChildren<Window> windows =
            new SegmentChildren<>(which.rows(log, WINDOWS, ", w.number"), ShiftReading::window);
        SegmentChildren<ExcursionRecord> excursions =
            new SegmentChildren<>(
                which.rows(log, EXCURSIONS, ", e.number"), ShiftReading::excursion);
        TechniqueReadings techniques =
            new TechniqueReadings(
                which.rows(log, TechniqueReadings.FIGURES, ""),
                which.rows(log, TechniqueReadings.CAUSES, ", c.number"));
        RunNotesReading notes =
            new RunNotesReading(
                which.rows(log, BEADS, ", b.id"),
                which.rows(log, REFERENCES, ", r.id"),
                techniques)) {
      while (row.next()) {
        runs.add(run(row, booths, windows, excursions, notes));
      }
    }
    return runs;
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
        // A start may be lost with a page of a damaged log.
        booths.getOrDefault(row.whole(), ""),
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

  private List<TouchRecord> touches(Selection which) throws SQLException {
    List<TouchRecord> touches = new ArrayList<>();
    try (Columns row = which.rows(log, TOUCHES, "")) {
      while (row.next()) {
        touches.add(new TouchRecord(row.text(), row.whole(), row.real(), row.real(), row.flag()));
      }
    }
    return touches;
  }

  private List<EventRecord> events(Selection which) throws SQLException {
    List<EventRecord> events = new ArrayList<>();
    try (Columns row = which.rows(log, EVENTS, "")) {
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
