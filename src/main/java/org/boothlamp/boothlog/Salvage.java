package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.monitor.NanoClock;

/**
 * Takes the rows of a damaged log over into the log, with their numbers, a few pages at a time, so
 * that new rows can be written in between. A row that is there already stays as it is: if the power
 * goes, the next start begins again. Confined to one thread.
 */
final class Salvage implements AutoCloseable {

  /**
   * Rows with higher numbers may be lost here and sent on long ago: a new row must not be taken for
   * one of them. More than a booth makes in a lifetime.
   */
  private static final long NUMBERS_LEFT_OUT = 1_000_000;

  /**
   * Few, and what the one who welds now is judged by; the end of a calibration after its points,
   * for from then on it takes none. The rest follows.
   */
  private static final List<String> FIRST =
      List.of(
          "sign_in",
          "calibration",
          "calibration_point",
          "calibration_discard",
          "calibration_finish",
          "calibration_withdrawal");

  /** A page, and the tables its rows can belong to. */
  private record Work(int page, List<TableShape> tables) {}

  private final Path path;
  private final DamagedFile file;
  private final List<TableShape> shapes;
  private final Deque<Work> work = new ArrayDeque<>();
  private volatile DamagedTables tables;
  private volatile IOException unreadable;
  private boolean planned;
  private long savedRows;
  private long lostRows;

  private Salvage(Path path, DamagedFile file, List<TableShape> shapes) {
    this.path = path;
    this.file = file;
    this.shapes = shapes;
  }

  /**
   * Opens a damaged file.
   *
   * @param log the log that takes its place, which has all tables
   */
  static Salvage of(Path damaged, LogConnection log) throws IOException, SQLException {
    List<TableShape> shapes = TableShape.allIn(log);
    return new Salvage(damaged, DamagedFile.open(damaged), shapes);
  }

  /** The damaged file. */
  Path path() {
    return path;
  }

  /** Which log it is, or null if that is lost. */
  String identity() throws IOException {
    return DamagedTables.identityOf(file);
  }

  /** The highest row number of each table, to be kept free before a new row is numbered. */
  Map<String, Long> taken() throws IOException {
    Map<String, Long> sequence = DamagedTables.sequenceOf(file);
    return sequence == null ? highestFound() : sequence;
  }

  private Map<String, Long> highestFound() throws IOException {
    tables = DamagedTables.in(file);
    plan();
    Map<String, Long> highest = new HashMap<>();
    for (Work one : work) {
      for (Found found : read(one)) {
        if (!found.table.keyed()) {
          highest.merge(found.table.name(), found.rowid, Math::max);
        }
      }
    }
    lostRows = 0;
    highest.replaceAll((table, number) -> number + NUMBERS_LEFT_OUT);
    return highest;
  }

  /** Looks at the whole file on a thread of its own, which on a slow card takes its time. */
  void beginToLook() {
    if (tables != null) {
      return;
    }
    Thread thread = new Thread(this::look, "boothlog-salvage");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
  }

  private void look() {
    try {
      tables = DamagedTables.in(file);
    } catch (IOException failure) {
      unreadable = failure;
    }
  }

  private void plan() {
    planned = true;
    List<TableShape> inOrder = new ArrayList<>(shapes);
    inOrder.sort(Comparator.comparingInt(Salvage::turn));
    for (TableShape shape : inOrder) {
      tables.pagesOf(shape.name()).forEach(page -> work.add(new Work(page, List.of(shape))));
    }
    List<TableShape> cut =
        shapes.stream().filter(shape -> tables.mayHaveLeftOver(shape.name())).toList();
    tables.leftOver().forEach(page -> work.add(new Work(page, cut)));
  }

  private static int turn(TableShape shape) {
    int index = FIRST.indexOf(shape.name());
    return index < 0 ? FIRST.size() : index;
  }

  /**
   * Takes some rows over in one transaction, once the file has been looked at.
   *
   * @return false if there are no more
   */
  boolean step(LogConnection log, NanoClock clock, long budgetNanos)
      throws IOException, SQLException {
    if (unreadable != null) {
      throw unreadable;
    }
    if (tables == null) {
      return true;
    }
    if (!planned) {
      plan();
    }
    saveSome(log, clock, budgetNanos);
    return !work.isEmpty();
  }

  private void saveSome(LogConnection log, NanoClock clock, long budgetNanos)
      throws IOException, SQLException {
    long endNanos = clock.nanoTime() + budgetNanos;
    Deque<Work> done = new ArrayDeque<>();
    long savedBefore = savedRows;
    long lostBefore = lostRows;
    try {
      inOneTransaction(
          log,
          () -> {
            do {
              Work one = work.poll();
              if (one == null) {
                return;
              }
              done.push(one);
              save(one, log);
            } while (clock.nanoTime() - endNanos < 0);
          });
    } catch (IOException | SQLException failure) {
      done.forEach(work::addFirst);
      savedRows = savedBefore;
      lostRows = lostBefore;
      throw failure;
    }
  }

  /** What is done inside a transaction. */
  @FunctionalInterface
  private interface Rows {
    void save() throws IOException, SQLException;
  }

  /** Rows may refer to others that are lost; that must not keep them out. */
  private static void inOneTransaction(LogConnection log, Rows rows)
      throws IOException, SQLException {
    log.execute("PRAGMA foreign_keys = OFF");
    try {
      log.execute("BEGIN IMMEDIATE");
      try {
        rows.save();
        log.execute("COMMIT");
      } catch (IOException | SQLException | RuntimeException failure) {
        log.execute("ROLLBACK");
        throw failure;
      }
    } finally {
      log.execute("PRAGMA foreign_keys = ON");
    }
  }

  private void save(Work one, LogConnection log) throws IOException, SQLException {
    for (Found found : read(one)) {
      Binding row = log.bind(found.table.insert(found.values.length));
      for (int i = 0; i < found.values.length; i++) {
        boolean number = found.table.columns().get(i).isRowNumber();
        row.stored(number ? Long.valueOf(found.rowid) : found.values[i]);
      }
      savedRows += run(row, log);
    }
  }

  /** A table may refuse what would change it: a row that is there already, or comes too late. */
  private int run(Binding row, LogConnection log) throws SQLException {
    try {
      return row.runAndCount();
    } catch (SQLException refused) {
      if (!SqliteCodes.isOfTheRow(refused)) {
        throw refused;
      }
      log.forgetStatements();
      lostRows++;
      return 0;
    }
  }

  /** A row and its table. */
  private record Found(TableShape table, long rowid, Object[] values) {}

  private List<Found> read(Work one) throws IOException {
    List<Found> rows = new ArrayList<>();
    BtreePage page = BtreePage.of(file.page(one.page), one.page);
    for (Cell cell : page.cells()) {
      Object[] values = tables.decode(page, cell);
      TableShape table = values == null ? null : onlyOneThatFits(one.tables, page, values);
      if (table != null) {
        rows.add(new Found(table, cell.rowid(), values));
      } else if (one.tables.size() == 1) {
        lostRows++;
      }
    }
    return rows;
  }

  /** Where more than one table could take a row, none does: better lost than in the wrong place. */
  private static TableShape onlyOneThatFits(
      List<TableShape> tables, BtreePage page, Object[] values) {
    TableShape only = null;
    for (TableShape table : tables) {
      if (table.keyed() != page.kind().isTable() && table.fits(values)) {
        if (only != null) {
          return null;
        }
        only = table;
      }
    }
    return only;
  }

  /** Rows taken over so far. */
  long savedRows() {
    return savedRows;
  }

  /** Rows on pages that could be read which are not whole. */
  long lostRows() {
    return lostRows;
  }

  /** Pages of tables that could not be read. */
  int lostPages() {
    return tables.lostPages();
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
