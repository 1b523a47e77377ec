package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A log that holds the rows of any number of booths. It is a booth log like any other to whoever
 * reads it. Row numbers of booths collide: a row keeps its own where it is free, else it gets the
 * next; the same row always has the same one. Confined to one thread.
 */
public final class CollectedLog implements AutoCloseable {

  private static final String NUMBER =
      "SELECT id FROM collected_row"
          + " WHERE booth = ? AND log = ? AND table_name = ? AND original_id = ?";
  private static final String KEEP =
      "INSERT INTO collected_row (booth, log, table_name, original_id, id) VALUES (?, ?, ?, ?, ?)";
  private static final String TAKEN =
      "SELECT count(*) FROM collected_row WHERE table_name = ? AND id = ?";
  private static final String NEXT =
      "SELECT coalesce(max(id), 0) + 1 FROM collected_row WHERE table_name = ?";

  /** Stands in for a start of the monitor whose own row has not come yet. */
  private static final String STAND_IN =
      "INSERT INTO boot (id, booth, started_wall_ms, started_mono_ns) VALUES (?, ?, 0, 0)";

  private final Path path;
  private final LogConnection log;
  private final CollectedNumbers numbers;
  private final Map<String, RowLayout> layouts = new HashMap<>();

  private CollectedLog(Path path, LogConnection log) {
    this.path = path;
    this.log = log;
    numbers = new CollectedNumbers(log);
  }

  /**
   * Opens a collected log; makes the file if it is missing.
   *
   * @throws BoothLogException if the file cannot be used, or is the own log of a booth
   */
  public static CollectedLog open(Path path) {
    LogConnection log = LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS);
    try {
      refuseLogOfOneBooth(path, log);
      log.execute(SchemaSteps.script("collected.sql"));
      return new CollectedLog(path, log);
    } catch (SQLException failure) {
      closeAfter(log, failure);
      throw LogFile.explain(path, failure);
    } catch (RuntimeException failure) {
      closeAfter(log, failure);
      throw failure;
    }
  }

  private static void refuseLogOfOneBooth(Path path, LogConnection log) throws SQLException {
    boolean collected =
        log.number("SELECT count(*) FROM sqlite_schema WHERE name = 'collected_row'") > 0;
    boolean empty =
        log.number("SELECT (SELECT count(*) FROM boot) + (SELECT count(*) FROM sign_in)") == 0;
    if (!collected && !empty) {
      throw new BoothLogException(
          "is the own log of a booth, and its row numbers must stay its own",
          path,
          "name another file to collect into",
          null);
    }
  }

  private static void closeAfter(LogConnection log, Exception failure) {
    try {
      log.close();
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  /** True if the batch with this name is in. */
  public boolean has(String batch) {
    try {
      return count("SELECT count(*) FROM collected_batch WHERE name = ?", batch) > 0;
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private long count(String sql, String text) throws SQLException {
    try (Columns row = log.bind(sql).text(text).rows()) {
      row.next();
      return row.whole();
    }
  }

  /**
   * Adds a batch, whole or not at all; rows that are in already stay as they are.
   *
   * @return rows with a number of their own that were new
   * @throws IllegalArgumentException if a row does not fit this log; says why
   */
  public int add(String batch, String booth, String boothLog, List<RowGroup> groups) {
    try {
      log.execute("BEGIN IMMEDIATE");
      try {
        int added = 0;
        for (RowGroup group : groups) {
          added += add(new Origin(booth, boothLog), group) ? 1 : 0;
        }
        log.bind("INSERT INTO collected_batch (name) VALUES (?) ON CONFLICT DO NOTHING")
            .text(batch)
            .run();
        log.execute("COMMIT");
        return added;
      } catch (SQLException | RuntimeException failure) {
        rollBack(failure);
        throw failure;
      }
    } catch (SQLException failure) {
      if (SqliteCodes.isOfTheRow(failure)) {
        throw new IllegalArgumentException(
            "holds a row that this log refuses (" + failure.getMessage() + ")", failure);
      }
      throw LogFile.explain(path, failure);
    }
  }

  private void rollBack(Exception failure) {
    numbers.forget();
    try {
      log.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  private record Origin(String booth, String log) {}

  private boolean add(Origin origin, RowGroup group) throws SQLException {
    String name = group.root().layout().table();
    LogTable table = LogTable.named(name);
    if (table == null) {
      throw new IllegalArgumentException("holds a table that this program does not know: " + name);
    }
    long known = known(origin, name, group.id());
    if (known != 0 && !awaitsItsRow(name, known)) {
      return false;
    }
    long id = known == 0 ? keep(origin, name, group.id()) : known;
    if (isOfRemovedSegment(origin, group.root())) {
      return false;
    }
    for (StoredRow row : group.rows()) {
      insert(origin, table, row, id);
    }
    return known == 0 || !name.equals(LogTable.BOOT);
  }

  /** The number that a row has here, or 0. */
  private long known(Origin origin, String table, long originalId) throws SQLException {
    return table.equals(LogTable.CALIBRATION)
        ? numbers.known(origin.log(), originalId)
        : number(origin, table, originalId);
  }

  /** A number can be there before its row is, because another row names it. */
  private boolean awaitsItsRow(String table, long id) throws SQLException {
    return table.equals(LogTable.BOOT)
        || table.equals(LogTable.CALIBRATION) && !numbers.isCollected(id);
  }

  /**
   * True for what was said of a segment that was forgotten here since.
   *
   * @throws IllegalArgumentException if the segment has not come yet: its batch must come first
   */
  private boolean isOfRemovedSegment(Origin origin, StoredRow row) throws SQLException {
    if (!(row.value(LogTable.SEGMENT_SPOKEN_OF) instanceof Long segment)) {
      return false;
    }
    return !isThere(segmentOf(origin, segment));
  }

  private boolean isThere(long segment) throws SQLException {
    try (Columns row =
        log.bind("SELECT count(*) FROM segment WHERE id = ?").whole(segment).rows()) {
      row.next();
      return row.whole() > 0;
    }
  }

  private long segmentOf(Origin origin, long originalSegment) throws SQLException {
    long segment = number(origin, LogTable.SEGMENT, originalSegment);
    if (segment == 0) {
      throw new IllegalArgumentException(
          "speaks of run "
              + originalSegment
              + ", which is not collected yet: collect the batch with that run first, or along with"
              + " this one");
    }
    return segment;
  }

  private long number(Origin origin, String table, long originalId) throws SQLException {
    try (Columns row =
        log.bind(NUMBER)
            .text(origin.booth())
            .text(origin.log())
            .text(table)
            .whole(originalId)
            .rows()) {
      return row.next() ? row.whole() : 0;
    }
  }

  private long keep(Origin origin, String table, long originalId) throws SQLException {
    long id =
        table.equals(LogTable.WITHDRAWAL)
            ? calibrationOf(origin, originalId)
            : free(table, originalId);
    log.bind(KEEP)
        .text(origin.booth())
        .text(origin.log())
        .text(table)
        .whole(originalId)
        .whole(id)
        .run();
    return id;
  }

  private long free(String table, long originalId) throws SQLException {
    return isTaken(table, originalId) ? count(NEXT, table) : originalId;
  }

  private boolean isTaken(String table, long id) throws SQLException {
    try (Columns row = log.bind(TAKEN).text(table).whole(id).rows()) {
      row.next();
      return row.whole() > 0;
    }
  }

  private void insert(Origin origin, LogTable table, StoredRow row, long id) throws SQLException {
    RowLayout layout = row.layout();
    requireKnown(layout);
    // Only the row of a boot can be there before, as a stand-in.
    String names = layout.columnList();
    String sql =
        "INSERT INTO "
            + layout.table()
            + " ("
            + names
            + ") VALUES (?"
            + ", ?".repeat(layout.columns().size() - 1)
            + ")"
            + (layout.table().equals(LogTable.BOOT) ? replacing(layout) : "");
    Binding statement = log.bind(sql);
    for (int i = 0; i < layout.columns().size(); i++) {
      statement.stored(mapped(origin, table, layout.columns().get(i), row.values()[i], id));
    }
    statement.run();
  }

  private static String replacing(RowLayout layout) {
    StringBuilder sql = new StringBuilder(" ON CONFLICT (id) DO UPDATE SET ");
    for (String column : layout.columns()) {
      sql.append(column.equals("id") ? "" : column + " = excluded." + column + ", ");
    }
    return sql.append("id = excluded.id").toString();
  }

  private void requireKnown(RowLayout layout) throws SQLException {
    RowLayout known = layouts.get(layout.table());
    if (known == null) {
      known = RowLayout.of(log, layout.table());
      layouts.put(layout.table(), known);
    }
    for (String column : layout.columns()) {
      if (!known.columns().contains(column)) {
        throw new IllegalArgumentException(
            "holds a column that this program does not know, "
                + layout.table()
                + "."
                + column
                + ": it was written by a newer version");
      }
    }
  }

  private Object mapped(Origin origin, LogTable table, String column, Object value, long id)
      throws SQLException {
    if (column.equals(table.key()) || column.equals(table.parent())) {
      return id;
    }
    return switch (column) {
      case LogTable.SEGMENT_SPOKEN_OF ->
          value instanceof Long segment ? segmentOf(origin, segment) : value;
      case LogTable.BOOT -> value instanceof Long boot ? bootOf(origin, boot) : value;
      case "current_calibration", "voltage_calibration", "calibration_number", "in_use_number" ->
          value instanceof Long number && number != 0 ? calibrationOf(origin, number) : value;
      default -> value;
    };
  }

  /** The number of a calibration here; dealt out if it has not come yet. */
  private long calibrationOf(Origin origin, long originalNumber) throws SQLException {
    long known = numbers.known(origin.log(), originalNumber);
    return known == 0 ? keep(origin, LogTable.CALIBRATION, originalNumber) : known;
  }

  private long bootOf(Origin origin, long originalBoot) throws SQLException {
    long known = number(origin, LogTable.BOOT, originalBoot);
    if (known != 0) {
      return known;
    }
    long id = keep(origin, LogTable.BOOT, originalBoot);
    log.bind(STAND_IN).whole(id).text(origin.booth()).run();
    return id;
  }

  /** Puts times of day right that became known in their booth later, whenever the rows came. */
  public void correctTimes() {
    try {
      log.execute("BEGIN IMMEDIATE");
      try {
        CorrectedTimes.followCollected(log);
        log.execute("COMMIT");
      } catch (SQLException | RuntimeException failure) {
        rollBack(failure);
        throw failure;
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  /** Removes the rows of trainees who were forgotten in their booth, whenever they came. */
  public void forget() {
    try {
      Forgetting.followCollected(log);
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  @Override
  public void close() {
    try {
      log.close();
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }
}
