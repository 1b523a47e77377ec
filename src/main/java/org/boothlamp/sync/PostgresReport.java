package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.EnteredBead;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.report.ReferenceWeld;
import org.boothlamp.report.RunNotes;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.TouchRecord;
import org.boothlamp.report.UntimedStart;
import org.boothlamp.signal.Polarity;

/**
 * Reads from a database what a booth's own log would say. Needs the right to read the views, no
 * other. Confined to one thread.
 */
public final class PostgresReport {

  /** Rows to read and their order; {@code s} is the view of what began at some time. */
  private record Selection(String where, String order, Object... values) {

    /** What began in a span of time, as far as that is known. */
    static Selection inSpan(long from, long until, String booth) {
      return new Selection(
          " WHERE s.time_known = 1 AND s.start_wall_ms >= ? AND s.start_wall_ms < ?"
              + " AND (? OR s.from_booth = ?)",
          " ORDER BY s.start_wall_ms, s.from_booth, s.from_log, s.id",
          from,
          until,
          booth.isEmpty(),
          booth);
    }

    /** All of one start, in the order of its monotonic clock. */
    static Selection ofStart(PostgresStarts.Found start) {
      return new Selection(
          " WHERE s.from_booth = ? AND s.from_log = ? AND s.boot = ?",
          " ORDER BY s.start_mono_ns, s.id",
          start.booth(),
          start.log(),
          start.number());
    }
  }

  private static final String SAME_RUN =
      ".from_booth = s.from_booth AND c.from_log = s.from_log AND c.segment_id = s.id";

  private static final String RUNS =
      "SELECT s.from_booth, s.from_log, s.id, coalesce(b.booth, s.from_booth), s.trainee,"
          + " s.procedure_id, s.procedure_revision, s.pass, s.process, s.start_wall_ms, s.start_s,"
          + " s.length_s, s.mean_amps, s.mean_volts, s.rms_amps, s.rms_volts, s.energy_j, s.mean_w,"
          + " s.polarity, s.short_circuits, s.arc_outs, s.green_s, s.amber_s, s.red_s,"
          + " s.settling_s, s.fault_s, s.missing_s, s.calibrated,"
          + " coalesce(s.current_calibration, 0), coalesce(s.voltage_calibration, 0), s.end_word"
          + " FROM boothlamp.current_segment s LEFT JOIN boothlamp.current_boot b"
          + " ON b.from_booth = s.from_booth AND b.from_log = s.from_log AND b.id = s.boot";
  private static final String WINDOWS =
      "SELECT c.from_booth, c.from_log, c.segment_id, c.quantity, c.low, c.high"
          + " FROM boothlamp.current_segment s JOIN boothlamp.current_segment_window c ON c"
          + SAME_RUN;
  private static final String EXCURSIONS =
      "SELECT c.from_booth, c.from_log, c.segment_id, c.quantity, c.side, c.start_s, c.length_s,"
          + " c.worst FROM boothlamp.current_segment s JOIN boothlamp.current_excursion c ON c"
          + SAME_RUN;
  private static final String BY_NUMBER = ", c.number";
  private static final String BEADS =
      "SELECT c.from_booth, c.from_log, c.segment_id, c.length_mm, c.wall_ms, c.entered_by, c.note"
          + " FROM boothlamp.current_segment s JOIN boothlamp.current_bead c ON c"
          + SAME_RUN;
  private static final String REFERENCES =
      "SELECT c.from_booth, c.from_log, c.segment_id, c.wall_ms, c.entered_by, c.words"
          + " FROM boothlamp.current_segment s JOIN boothlamp.current_reference_weld c ON c"
          + SAME_RUN;
  private static final String TOUCHES =
      "SELECT s.trainee, s.start_wall_ms, s.start_s, s.length_s, s.stuck"
          + " FROM boothlamp.current_touch s";
  private static final String EVENTS =
      "SELECT s.word, s.fault, s.start_wall_ms, s.start_s, s.length_s, s.count, s.detail"
          + " FROM boothlamp.current_event s";

  /**
   * What was found. Immutable.
   *
   * @param records all that began in the span
   * @param calibrations all, of whatever time; runs name them by the numbers they have here
   */
  public record Found(ShiftRecords records, BoothHistories calibrations) {}

  /** A run by what it is known by. */
  private record RunKey(String booth, String log, long id) {}

  @FunctionalInterface
  private interface Reading<T> {
    T of(Row row) throws SQLException;
  }

  private final Connection connection;
  private final String booth;
  private final long fromWallMillis;
  private final long untilWallMillis;
  private PostgresCalibrations calibrations;

  private PostgresReport(
      Connection connection, String booth, long fromWallMillis, long untilWallMillis) {
    this.connection = connection;
    this.booth = booth;
    this.fromWallMillis = fromWallMillis;
    this.untilWallMillis = untilWallMillis;
  }

  /**
   * All that began in a span of time, as of one moment.
   *
   * @param booth only this booth; empty for all
   * @param fromWallMillis time of day, ms since the epoch, inside
   * @param untilWallMillis likewise, outside
   */
  public static Found read(
      PostgresTarget target, String booth, long fromWallMillis, long untilWallMillis)
      throws SyncException {
    try (Connection connection = PostgresConnections.open(target)) {
      PostgresSchema.check(connection, target);
      connection.setAutoCommit(false);
      connection.setReadOnly(true);
      connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
      return new PostgresReport(connection, booth, fromWallMillis, untilWallMillis).read();
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }

  private Found read() throws SQLException {
    calibrations = PostgresCalibrations.read(connection, booth);
    Selection span = Selection.inSpan(fromWallMillis, untilWallMillis, booth);
    ShiftRecords records =
        new ShiftRecords(
            runs(span),
            list(TOUCHES, span, PostgresReport::touch),
            list(EVENTS, span, PostgresReport::event),
            untimed());
    return new Found(records, calibrations.histories());
  }

  private List<UntimedStart> untimed() throws SQLException {
    List<UntimedStart> untimed = new ArrayList<>();
    for (PostgresStarts.Found start :
        PostgresStarts.untimedIn(connection, booth, fromWallMillis, untilWallMillis)) {
      Selection all = Selection.ofStart(start);
      untimed.add(
          new UntimedStart(
              start.number(),
              new ShiftRecords(
                  runs(all),
                  list(TOUCHES, all, PostgresReport::touch),
                  list(EVENTS, all, PostgresReport::event))));
    }
    return untimed;
  }

  private List<RunRecord> runs(Selection which) throws SQLException {
    Map<RunKey, List<Window>> windows = byRun(WINDOWS, which, BY_NUMBER, PostgresReport::window);
    Map<RunKey, List<ExcursionRecord>> excursions =
        byRun(EXCURSIONS, which, BY_NUMBER, PostgresReport::excursion);
    Map<RunKey, RunNotes> notes = notes(which);
    return list(RUNS, which, row -> run(row, windows, excursions, notes));
  }

  private Map<RunKey, RunNotes> notes(Selection which) throws SQLException {
    Map<RunKey, List<EnteredBead>> beads = byRun(BEADS, which, "", PostgresReport::bead);
    Map<RunKey, List<ReferenceWeld>> references =
        byRun(REFERENCES, which, "", PostgresReport::reference);
    Map<RunKey, RunNotes> notes = new HashMap<>();
    beads.forEach((run, bead) -> notes.put(run, new RunNotes(bead.get(0), null)));
    references.forEach(
        (run, mark) ->
            notes.merge(
                run,
                new RunNotes(null, mark.get(0)),
                (bead, reference) -> new RunNotes(bead.bead(), reference.reference())));
    return notes;
  }

  private <T> List<T> list(String select, Selection which, Reading<T> reading) throws SQLException {
    List<T> list = new ArrayList<>();
    forEach(select, which, "", row -> list.add(reading.of(row)));
    return list;
  }

  private <T> Map<RunKey, List<T>> byRun(
      String select, Selection which, String furtherOrder, Reading<T> reading) throws SQLException {
    Map<RunKey, List<T>> lists = new HashMap<>();
    forEach(
        select,
        which,
        furtherOrder,
        row -> lists.computeIfAbsent(key(row), run -> new ArrayList<>()).add(reading.of(row)));
    return lists;
  }

  private void forEach(
      String select, Selection which, String furtherOrder, Reading<Boolean> reading)
      throws SQLException {
    String sql = select + which.where() + which.order() + furtherOrder;
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < which.values().length; i++) {
        statement.setObject(i + 1, which.values()[i]);
      }
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          reading.of(new Row(rows));
        }
      }
    }
  }

  private static RunKey key(Row row) throws SQLException {
    return new RunKey(row.text(), row.text(), row.whole());
  }

  /** Arguments are taken in the order of the columns, which is that of the record. */
  private RunRecord run(
      Row row,
      Map<RunKey, List<Window>> windows,
      Map<RunKey, List<ExcursionRecord>> excursions,
      Map<RunKey, RunNotes> notes)
      throws SQLException {
    RunKey key = key(row);
    return new RunRecord(
        key.id(),
        row.text(),
        row.text(),
        row.text(),
        row.text(),
        row.text(),
        row.text(),
        windows.getOrDefault(key, List.of()),
        row.whole(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.word(Polarity.values(), Polarity::word),
        row.whole(),
        (int) row.whole(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.whole() != 0,
        new CalibrationNumbers(
            calibrations.number(key.log(), row.whole()),
            calibrations.number(key.log(), row.whole())),
        row.text(),
        excursions.getOrDefault(key, List.of()),
        notes.getOrDefault(key, RunNotes.NONE));
  }

  private static EnteredBead bead(Row row) throws SQLException {
    return new EnteredBead(row.real(), row.whole(), EnteredBy.ofWord(row.text()), row.text());
  }

  private static ReferenceWeld reference(Row row) throws SQLException {
    return new ReferenceWeld(row.whole(), EnteredBy.ofWord(row.text()), row.text());
  }

  private static Window window(Row row) throws SQLException {
    return new Window(row.word(Quantity.values(), Quantity::key), row.real(), row.real());
  }

  private static ExcursionRecord excursion(Row row) throws SQLException {
    return new ExcursionRecord(
        row.word(Quantity.values(), Quantity::key),
        row.word(Side.values(), Side::word),
        row.real(),
        row.real(),
        row.real());
  }

  private static TouchRecord touch(Row row) throws SQLException {
    return new TouchRecord(row.text(), row.whole(), row.real(), row.real(), row.whole() != 0);
  }

  private static EventRecord event(Row row) throws SQLException {
    return new EventRecord(
        row.text(), row.whole() != 0, row.whole(), row.real(), row.real(), row.whole(), row.text());
  }

  /** Takes the values of a row from left to right; a NULL number comes out as NaN. */
  private static final class Row {

    private final ResultSet rows;
    private int column;

    Row(ResultSet rows) {
      this.rows = rows;
    }

    String text() throws SQLException {
      return rows.getString(++column);
    }

    long whole() throws SQLException {
      return rows.getLong(++column);
    }

    double real() throws SQLException {
      double value = rows.getDouble(++column);
      return rows.wasNull() ? Double.NaN : value;
    }

    <T> T word(T[] values, Function<T, String> wordOf) throws SQLException {
      String word = text();
      for (T value : values) {
        if (wordOf.apply(value).equals(word)) {
          return value;
        }
      }
      throw new SQLException(
          "column must hold one of "
              + Arrays.stream(values).map(wordOf).toList()
              + ", but holds "
              + word);
    }
  }
}
