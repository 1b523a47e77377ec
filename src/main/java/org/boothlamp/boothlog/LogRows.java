package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Reads a log row by row, whatever its tables and columns, for those who send it on. Never writes,
 * and holds no moment of the log longer than one call. Confined to one thread at a time.
 */
public final class LogRows implements AutoCloseable {

  private final Path path;
  private final LogConnection log;
  private final Map<String, RowLayout> layouts = new HashMap<>();

  private LogRows(Path path, LogConnection log) {
    this.path = path;
    this.log = log;
  }

  /**
   * Opens a log for reading.
   *
   * @throws BoothLogException if there is no such file, or it is not a log this program can read
   */
  public static LogRows open(Path path) {
    return new LogRows(path, LogFile.openForReading(path));
  }

  /** Names of the tables whose rows are sent on, in the order in which to send them. */
  public static List<String> tables() {
    return LogTable.ALL.stream().map(LogTable::name).toList();
  }

  /** The same, and the tables of the rows that belong to others. */
  public static List<String> allTables() {
    return LogTable.ALL.stream()
        .flatMap(table -> Stream.concat(Stream.of(table.name()), table.children().stream()))
        .toList();
  }

  /** What tells this log from every other one. */
  public String identity() {
    try {
      return log.text("SELECT log FROM log_identity");
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  /** Whether a row that comes later always has a higher number than those before it. */
  public static boolean isInOrder(String table) {
    return known(table).order() == LogTable.Order.RISING;
  }

  /**
   * The row number of a row that others belong to.
   *
   * @throws IllegalArgumentException if it has none
   */
  public static long numberOf(StoredRow root) {
    LogTable table = LogTable.named(root.layout().table());
    return root.number(table == null ? "id" : table.key());
  }

  /** Row numbers of a table whose rows come in any order. */
  public List<Long> numbers(String table) {
    String key = known(table).key();
    List<Long> numbers = new ArrayList<>();
    try (Columns row = log.bind("SELECT " + key + " FROM " + table + " ORDER BY " + key).rows()) {
      while (row.next()) {
        numbers.add(row.whole());
      }
      return numbers;
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  /** Rows of a table after a row number. */
  public long countAfter(String table, long id) {
    LogTable known = known(table);
    try {
      return log.number(
          "SELECT count(*) FROM " + known.name() + " WHERE " + known.key() + " > " + id);
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private static LogTable known(String name) {
    LogTable table = LogTable.named(name);
    if (table == null) {
      throw new IllegalArgumentException("must be a table that is sent on: table=" + name);
    }
    return table;
  }

  /**
   * The next rows of a table.
   *
   * @param afterId row number after which to begin
   * @param mostGroups rows to look at, at most
   * @param enoughBytes no further row is read after this many bytes
   */
  public RowReading next(String table, long afterId, int mostGroups, long enoughBytes) {
    String key = known(table).key();
    String where = " WHERE " + key + " > ? ORDER BY " + key + " LIMIT ?";
    return read(
        known(table), where, row -> row.whole(afterId).whole(mostGroups), afterId, enoughBytes);
  }

  /** One row if it is there and final; else it is in {@code notFinal}, or in neither list. */
  public RowReading one(String table, long id) {
    LogTable known = known(table);
    return read(known, " WHERE " + known.key() + " = ?", row -> row.whole(id), id, Long.MAX_VALUE);
  }

  @FunctionalInterface
  private interface Question {
    Binding bind(Binding statement) throws SQLException;
  }

  private RowReading read(
      LogTable table, String where, Question question, long afterId, long enoughBytes) {
    try {
      log.execute("BEGIN");
      try {
        return readAtOneMoment(table, where, question, afterId, enoughBytes);
      } finally {
        log.execute("COMMIT");
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private RowReading readAtOneMoment(
      LogTable table, String where, Question question, long afterId, long enoughBytes)
      throws SQLException {
    RowLayout layout = layout(table.name());
    String sql =
        "SELECT "
            + table.finalWhen()
            + ", "
            + layout.columnList()
            + " FROM "
            + table.name()
            + where;
    List<RowGroup> groups = new ArrayList<>();
    List<Long> notFinal = new ArrayList<>();
    long lastId = afterId;
    long bytes = 0;
    try (Columns row = question.bind(log.bind(sql)).rows()) {
      while (bytes < enoughBytes && row.next()) {
        boolean isFinal = row.flag();
        StoredRow root = layout.read(row);
        lastId = root.number(table.key());
        if (isFinal) {
          RowGroup group = group(table, root, lastId);
          groups.add(group);
          bytes += group.bytes();
        } else {
          notFinal.add(lastId);
        }
      }
    }
    return new RowReading(groups, notFinal, lastId);
  }

  private RowGroup group(LogTable table, StoredRow root, long id) throws SQLException {
    List<StoredRow> rows = new ArrayList<>();
    rows.add(root);
    for (String child : table.children()) {
      addChildren(layout(child), table.parent(), id, rows);
    }
    return new RowGroup(id, rows);
  }

  private void addChildren(RowLayout layout, String parent, long id, List<StoredRow> rows)
      throws SQLException {
    String sql =
        "SELECT "
            + layout.columnList()
            + " FROM "
            + layout.table()
            + " WHERE "
            + parent
            + " = ? ORDER BY 1, 2";
    try (Columns row = log.bind(sql).whole(id).rows()) {
      while (row.next()) {
        rows.add(layout.read(row));
      }
    }
  }

  private RowLayout layout(String table) throws SQLException {
    RowLayout layout = layouts.get(table);
    if (layout == null) {
      layout = RowLayout.of(log, table);
      layouts.put(table, layout);
    }
    return layout;
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
