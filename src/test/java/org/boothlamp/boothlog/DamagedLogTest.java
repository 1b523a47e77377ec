package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.EventRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(120)
class DamagedLogTest {

  private static final int PLACES = 50;

  @TempDir static Path shared;
  private static Path original;

  @TempDir Path folder;
  private Path path;

  @BeforeAll
  static void weld() {
    original = shared.resolve("original.db");
    NoisyLog.write(original);
  }

  @BeforeEach
  void copy() throws IOException {
    path = Files.copy(original, folder.resolve(BoothLog.FILE_NAME));
  }

  /** Starts a monitor on the log and lets it save what it can; answers the events it wrote. */
  private List<EventRecord> startAndSalvage() throws Exception {
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(started(1, "NEW"), ended(1, 5, SegmentEnd.ARC_OFF));
      bench.settle();
      // Time of the bench is turned by hand; the look at the file takes real time.
      for (int i = 0; i < 20_000 && !isSalvaged(bench); i++) {
        bench.writer.step();
      }
      return bench.records().events();
    }
  }

  private static boolean isSalvaged(WriterBench bench) throws Exception {
    return bench.number("SELECT count(*) FROM salvage") > 0;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void shouldSaveEveryRowThatIsNotOnAnOverwrittenPage(long seed) throws Exception {
    Set<Integer> noisy = NoisyLog.overwrite(path, PLACES, new Random(seed));
    List<EventRecord> events = startAndSalvage();

    assertNothingIsInvented();
    int expected = assertSaved(noisy);
    assertTrue(expected > 1_000, "too little was left to prove anything: " + expected);
    assertTrue(events.stream().anyMatch(event -> event.what().equals("log damaged")));
    assertTrue(events.stream().anyMatch(event -> event.what().equals("log salvaged")));
  }

  @Test
  void shouldSaveEveryRowWhenOnlyTheFirstPageIsLost() throws Exception {
    NoisyLog.overwritePage(path, 1, new Random(9));
    startAndSalvage();
    assertNothingIsInvented();
    assertSaved(Set.of(1));
  }

  @Test
  void shouldGiveNewRowsNumbersAboveTheOldOnes() throws Exception {
    for (int page = 1; page < 4; page++) {
      NoisyLog.overwritePage(path, page, new Random(page));
    }
    startAndSalvage();
    try (LogConnection log = LogFile.openForReading(path)) {
      assertTrue(
          log.number("SELECT id FROM segment WHERE trainee = 'NEW'") > NoisyLog.SEGMENTS / 2);
      assertEquals(1, log.number("SELECT count(*) FROM segment WHERE trainee = 'NEW'"));
      assertEquals("ok", log.text("PRAGMA integrity_check"));
    }
  }

  @Test
  void shouldStayTheSameLogToWhereItsRowsWereSent() throws Exception {
    String identity = identity();
    NoisyLog.overwritePage(path, pages(), new Random(5));
    startAndSalvage();
    assertEquals(identity, identity());
  }

  private String identity() throws SQLException {
    try (LogConnection log = LogFile.openForReading(path)) {
      return log.text("SELECT log FROM log_identity");
    }
  }

  private int pages() throws IOException {
    return (int) (Files.size(path) / 4_096);
  }

  @Test
  void shouldLeaveNumbersOutWhenNobodyKnowsWhichWereDealt() throws Exception {
    for (int page = 1; page < 8; page++) {
      NoisyLog.overwritePage(path, page, new Random(page));
    }
    startAndSalvage();
    try (LogConnection log = LogFile.openForReading(path)) {
      assertTrue(log.number("SELECT id FROM segment WHERE trainee = 'NEW'") > 1_000_000);
    }
  }

  @Test
  void shouldTakeCalibrationsOverWholeAndInForce() throws Exception {
    List<CalibrationRecord> before = calibrations();
    NoisyLog.overwritePage(path, 40, new Random(3));
    List<CalibrationHistory> told;
    try (WriterBench bench = new WriterBench(path)) {
      for (int i = 0; i < 20_000 && !isSalvaged(bench); i++) {
        bench.writer.step();
      }
      bench.settleFor(1);
      told = List.copyOf(bench.calibrations);
    }
    assertEquals(before, calibrations());
    assertEquals(before, told.get(told.size() - 1).records());
  }

  private List<CalibrationRecord> calibrations() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.calibrations().records();
    }
  }

  @Test
  void shouldKeepTheDamagedFileUnderItsDate() throws Exception {
    NoisyLog.overwritePage(path, 1, new Random(1));
    byte[] damaged = Files.readAllBytes(path);
    startAndSalvage();
    Path aside = folder.resolve("booth.db.damaged-2026-03-02T0700");
    assertTrue(Arrays.equals(damaged, Files.readAllBytes(aside)));
  }

  @Test
  void shouldSaveNothingTwiceOverTheNextStarts() throws Exception {
    NoisyLog.overwritePage(path, 30, new Random(1));
    startAndSalvage();
    long saved = count("segment");
    startAndSalvage();
    assertEquals(saved + 1, count("segment"), "only the new one of the second start");
    assertEquals(1, count("salvage"));
  }

  private long count(String table) throws SQLException {
    try (LogConnection log = LogFile.openForReading(path)) {
      return log.number("SELECT count(*) FROM " + table);
    }
  }

  @Test
  void shouldTakeTheNewestPagesFromTheWriteAheadFile() throws Exception {
    Path left = folder.resolve("left.db");
    try (WriterBench bench = new WriterBench(path)) {
      for (int i = 0; i < 20; i++) {
        bench.offer(started(70_000 + 10 * i, "WAL"), ended(70_000 + 10 * i, 5, SegmentEnd.ARC_OFF));
        bench.settle();
      }
      Files.copy(path, left);
      Files.copy(folder.resolve("booth.db-wal"), folder.resolve("left.db-wal"));
    }
    NoisyLog.overwritePage(left, 1, new Random(1));
    path = left;
    startAndSalvage();
    try (LogConnection log = LogFile.openForReading(path)) {
      assertEquals(20, log.number("SELECT count(*) FROM segment WHERE trainee = 'WAL'"));
    }
  }

  @Test
  void shouldGoOnInANewFileWhenDamageComesWhileARunIsWelded() throws Exception {
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(started(1, "NEW"), progress(1, 2));
      bench.settle();
      long boot = bench.number("SELECT max(id) FROM boot");
      bench.dropConnection();
      NoisyLog.overwritePage(path, 1, new Random(1));
      bench.offer(ended(1, 5, SegmentEnd.ARC_OFF));
      bench.settleFor(3);
      for (int i = 0; i < 20_000 && !isSalvaged(bench); i++) {
        bench.writer.step();
      }
      assertEquals(NoisyLog.SEGMENTS + 1, bench.counts().segments());
      assertEquals(
          1,
          bench.number(
              "SELECT count(*) FROM segment WHERE trainee = 'NEW' AND length_s = 5"
                  + " AND end_word = 'arc off' AND boot = "
                  + boot));
    }
  }

  @Test
  void shouldFindDamageBesideTheWriterWhenTheFirstLookHadToEndEarly() throws Exception {
    try (LogConnection log = LogFile.openForReading(path)) {
      assertEquals(LogCheck.Result.UNFINISHED, LogCheck.run(log, () -> true));
    }
    NoisyLog.overwritePage(path, 40, new Random(1));
    try (LogConnection log = LogFile.openForReading(path)) {
      assertEquals(LogCheck.Result.DAMAGED, LogCheck.run(log, () -> false));
    }
    BackgroundCheck check = BackgroundCheck.begin(path);
    while (!check.foundDamage()) {
      Thread.onSpinWait();
    }
  }

  @Test
  void shouldEndTheMoveThatAPowerLossCutOff() throws Exception {
    Path aside = folder.resolve("booth.db.damaged-2026-03-01T0800");
    Files.write(folder.resolve(aside.getFileName() + "-wal"), new byte[0]);
    BoothLog.openPatiently(path).close();
    assertTrue(Files.exists(aside));
    startAndSalvage();
    assertEquals(NoisyLog.SEGMENTS + 1, count("segment"));
  }

  /** Every row of the old numbers is one of the original's, value for value. */
  private void assertNothingIsInvented() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("ATTACH '" + original + "' AS original");
      for (String table : List.of("excursion", "segment_window", "trace")) {
        assertNoRows(
            statement,
            "SELECT * FROM main."
                + table
                + " WHERE segment_id NOT IN (SELECT id FROM main.segment WHERE trainee = 'NEW')"
                + " EXCEPT SELECT * FROM original."
                + table);
      }
      assertNoRows(
          statement,
          "SELECT * FROM main.segment WHERE trainee <> 'NEW'"
              + " EXCEPT SELECT * FROM original.segment");
      assertNoRows(statement, "SELECT * FROM main.touch EXCEPT SELECT * FROM original.touch");
      assertNoRows(statement, "SELECT * FROM main.sign_in EXCEPT SELECT * FROM original.sign_in");
      assertNoRows(
          statement,
          "SELECT * FROM main.event WHERE word NOT LIKE 'log %'"
              + " EXCEPT SELECT * FROM original.event");
    }
  }

  private static void assertNoRows(Statement statement, String sql) throws SQLException {
    try (ResultSet rows = statement.executeQuery("SELECT count(*) FROM (" + sql + ")")) {
      assertEquals(0, rows.getLong(1), sql);
    }
  }

  /** Where each row lay is taken from the original, which is whole. */
  private int assertSaved(Set<Integer> noisy) throws Exception {
    int expected = 0;
    try (DamagedFile whole = DamagedFile.open(original);
        LogConnection log = LogFile.openForReading(original);
        Connection saved = DriverManager.getConnection("jdbc:sqlite:" + path)) {
      DamagedTables tables = DamagedTables.in(whole);
      for (TableShape table : TableShape.allIn(log)) {
        String keys =
            table.keyed()
                ? table.columns().get(0).name() + " = ? AND " + table.columns().get(1).name()
                : "rowid";
        try (PreparedStatement find =
            saved.prepareStatement(
                "SELECT 1 FROM \"" + table.name() + "\" WHERE " + keys + " = ?")) {
          for (int number : tables.pagesOf(table.name())) {
            expected +=
                noisy.contains(number) ? 0 : assertSaved(whole, tables, number, noisy, table, find);
          }
        }
      }
    }
    return expected;
  }

  private static int assertSaved(
      DamagedFile whole,
      DamagedTables tables,
      int number,
      Set<Integer> noisy,
      TableShape table,
      PreparedStatement find)
      throws Exception {
    int expected = 0;
    BtreePage page = BtreePage.of(whole.page(number), number);
    for (Cell cell : page.cells()) {
      if (cell.overflowPage() != 0 && noisy.contains(cell.overflowPage())) {
        continue;
      }
      Object[] values = tables.decode(page, cell);
      find.setObject(1, table.keyed() ? values[0] : (Object) cell.rowid());
      if (table.keyed()) {
        find.setObject(2, values[1]);
      }
      try (ResultSet found = find.executeQuery()) {
        assertTrue(found.next(), table.name() + " on page " + number);
      }
      expected++;
    }
    return expected;
  }
}
