package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.calibration.AccuracyClass;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.TemperatureAllowance;
import org.boothlamp.calibration.Weighting;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Calibrations in the file of a booth log. */
class BoothCalibrationsTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final ChannelScale NOMINAL = new ChannelScale(0.2, 2048);

  /** Every field another value, so that none can stand in for another. */
  private static final CalibrationHead HEAD =
      new CalibrationHead(
          "B-07",
          Channel.VOLTAGE,
          new ChannelScale(-0.013, 31.5),
          50,
          DAY,
          1_772_434_800_123L,
          "K-2",
          new ReferenceMeter("bench meter", "M-1", "C-77", DAY.minusMonths(3), 0.05, 4, 0.001),
          new ChannelScale(-0.0131, 30.25),
          7,
          new CalibrationRules(
              new AccuracyClass("the school's own", 0.01, 0.005),
              Weighting.BY_UNCERTAINTY,
              6,
              0.85,
              0.002,
              0.015,
              5,
              new TemperatureAllowance(0.03, 0.004),
              18,
              24));

  private static final CalibrationFinish ACCEPTED =
      Calibrations.accepted(
          1_772_438_400_000L,
          new ChannelScale(-0.0132, 30.5),
          new ExpandedUncertainty(0.12, 0.0015),
          DAY.plusMonths(24));

  @TempDir Path folder;
  private Path path;
  private CalibrationBook book;

  @BeforeEach
  void open() {
    path = folder.resolve(BoothLog.FILE_NAME);
    book = BoothCalibrations.open(path);
  }

  @AfterEach
  void close() {
    book.close();
  }

  private static CalibrationPoint point(double level) {
    return new CalibrationPoint(
        level, Direction.FALLING, 1536.25, 0.75, 9_871, -0.125, level + 0.002, null);
  }

  private CalibrationRecord only() {
    assertEquals(1, book.history().records().size());
    return book.history().records().get(0);
  }

  @Test
  void shouldGiveBackEveryFieldOfHeadPointsAndEnd() {
    long number = book.begin(HEAD);
    book.addPoint(number, point(20));
    book.addPoint(number, point(30).discarded("load bank tripped"));
    book.finish(number, ACCEPTED);

    assertEquals(1, number);
    assertEquals(
        new CalibrationRecord(
            1, HEAD, List.of(point(20), point(30).discarded("load bank tripped")), ACCEPTED, null),
        only());
  }

  @Test
  void shouldKeepAPointThatWasNotMeasured() {
    long number = book.begin(HEAD);
    CalibrationPoint overload =
        new CalibrationPoint(
            40, Direction.RISING, Double.NaN, Double.NaN, 0, Double.NaN, 9.9e37, null);
    book.addPoint(number, overload);
    assertEquals(List.of(overload), only().points());
  }

  @Test
  void shouldThrowAPointAwayOnceAndKeepItInTheRecord() {
    long number = book.begin(HEAD);
    book.addPoint(number, point(20));
    book.discard(number, 0, "lead slipped");
    assertEquals(List.of(point(20).discarded("lead slipped")), only().points());
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, 0, "again"));
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, 1, "no such point"));
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, 0, " "));
  }

  @Test
  void shouldEndACalibrationOnceAndTakeNothingMore() {
    long number = book.begin(HEAD);
    book.addPoint(number, point(20));
    book.finish(number, CalibrationFinish.abandoned(5, "went home"));
    assertThrows(IllegalStateException.class, () -> book.finish(number, ACCEPTED));
    assertThrows(IllegalStateException.class, () -> book.addPoint(number, point(30)));
    assertThrows(IllegalStateException.class, () -> book.discard(number, 0, "late"));
    assertEquals(CalibrationFinish.abandoned(5, "went home"), only().finish());
  }

  @Test
  void shouldWithdrawOnlyWhatIsAcceptedAndOnlyOnce() {
    Withdrawal withdrawal = new Withdrawal(10, 20, "K-3", "clamp was dropped");
    long number = book.begin(HEAD);
    assertThrows(IllegalStateException.class, () -> book.withdraw(number, withdrawal));
    assertThrows(IllegalStateException.class, () -> book.withdraw(99, withdrawal));
    book.finish(number, ACCEPTED);
    book.withdraw(number, withdrawal);
    assertThrows(IllegalStateException.class, () -> book.withdraw(number, withdrawal));
    assertEquals(withdrawal, only().withdrawal());
  }

  @Test
  void shouldNumberBothChannelsInOneRowAndNeverTwice() {
    assertEquals(1, book.begin(HEAD));
    assertEquals(2, book.begin(Calibrations.head(Channel.CURRENT, NOMINAL, DAY)));
    book.close();
    book = BoothCalibrations.open(path);
    assertEquals(3, book.begin(HEAD));
  }

  @Test
  void shouldKeepChecksInOrderOfTime() {
    CalibrationCheck late =
        new CalibrationCheck(Channel.CURRENT, 3, 2_000, "K-2", "clamp M-4", 100, 101, 0.5, 900, 2);
    CalibrationCheck early =
        new CalibrationCheck(Channel.CURRENT, 0, 1_000, "K-2", "clamp M-4", 50, 51, 0.4, 800, 2);
    book.addCheck(late);
    book.addCheck(early);
    assertEquals(List.of(early, late), book.checks(Channel.CURRENT));
    assertEquals(List.of(), book.checks(Channel.VOLTAGE));
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      assertEquals(List.of(early, late), reader.calibrationChecks(Channel.CURRENT));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE calibration SET technician = 'K-9'",
        "DELETE FROM calibration",
        "INSERT OR REPLACE INTO calibration SELECT * FROM calibration",
        "UPDATE calibration_point SET reference = 1",
        "DELETE FROM calibration_point",
        "INSERT OR REPLACE INTO calibration_point SELECT * FROM calibration_point",
        "INSERT INTO calibration_point SELECT calibration_id, 9, level, direction, mean_counts,"
            + " standard_deviation_counts, readings, drift_counts, reference FROM calibration_point"
            + " LIMIT 1",
        "UPDATE calibration_discard SET reason = 'x'",
        "DELETE FROM calibration_discard",
        "INSERT OR REPLACE INTO calibration_discard SELECT * FROM calibration_discard",
        "UPDATE calibration_finish SET next_due = '2099-01-01'",
        "DELETE FROM calibration_finish",
        "INSERT OR REPLACE INTO calibration_finish SELECT * FROM calibration_finish",
        "UPDATE calibration_withdrawal SET reason = 'x'",
        "DELETE FROM calibration_withdrawal",
        "INSERT OR REPLACE INTO calibration_withdrawal SELECT * FROM calibration_withdrawal",
        "UPDATE calibration_check SET reading = 1",
        "DELETE FROM calibration_check",
        "INSERT OR REPLACE INTO calibration_check SELECT * FROM calibration_check"
      })
  void shouldRefuseToChangeWhatIsWritten(String sql) {
    long number = book.begin(HEAD);
    book.addPoint(number, point(20).discarded("lead slipped"));
    book.addPoint(number, point(30));
    book.finish(number, ACCEPTED);
    book.withdraw(number, new Withdrawal(10, 20, "K-3", "clamp was dropped"));
    book.addCheck(
        new CalibrationCheck(Channel.VOLTAGE, 1, 1_000, "K-2", "meter", 20, 20.1, 0.1, 800, 1));
    CalibrationRecord before = only();

    SQLException refused = assertThrows(SQLException.class, () -> executeElsewhere(sql));
    assertTrue(refused.getMessage().contains("CONSTRAINT_TRIGGER"), refused.getMessage());
    assertEquals(before, only());
    assertEquals(1, book.checks(Channel.VOLTAGE).size());
  }

  /** As any other program would, without the settings that this one makes. */
  private void executeElsewhere(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  @Test
  void shouldBringALogOfTheFirstSchemaUpToDateWithoutLoss() throws Exception {
    Path old = folder.resolve("old.db");
    String script;
    try (var text = SchemaSteps.class.getResourceAsStream("schema/001-booth-log.sql")) {
      script = new String(text.readAllBytes(), StandardCharsets.UTF_8);
    }
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(script);
      statement.executeUpdate("PRAGMA application_id = " + SchemaSteps.APPLICATION_ID);
      statement.executeUpdate("PRAGMA user_version = 1");
      statement.executeUpdate("INSERT INTO boot VALUES (1, 'B-07', 1772400000100, 200, NULL)");
      statement.executeUpdate(
          "INSERT INTO segment VALUES (4, 1, 'T-04', 'S-1', '2', 'fill', '111', 1, 1772400001000, 2000, 3.5,"
              + " 10, 110, 23, 111, 24, 25000, 2500, 'dc+', 41, 2, 8, 1, 0.5, 0.5, 0, 0, 0.2, 2048,"
              + " 0.01, 5, 10000, 'arc off')");
    }

    BoothLog.open(old).close();

    try (BoothLogReader reader = BoothLogReader.open(old)) {
      var run = reader.read(0, Long.MAX_VALUE).runs().get(0);
      assertEquals("T-04", run.trainee());
      assertEquals(110, run.meanAmps());
      assertTrue(run.calibrated());
      assertEquals(0, run.calibrations().current());
      assertEquals(List.of(), reader.calibrations().records());
      assertEquals(2048, reader.runTrace(4).scale().current().zeroCount());
    }
  }

  @Test
  void shouldGoOnBesideAMonitorThatWrites() {
    try (WriterBench bench = new WriterBench(folder.resolve("beside.db"));
        CalibrationBook beside = BoothCalibrations.open(folder.resolve("beside.db"))) {
      bench.settle();
      assertEquals(1, bench.calibrations.size());
      long number = beside.begin(HEAD);
      bench.settle();
      assertEquals(1, bench.calibrations.size(), "nothing to scale by yet");
      beside.finish(number, ACCEPTED);
      bench.settle();
      assertEquals(2, bench.calibrations.size());
      assertEquals(ACCEPTED, bench.calibrations.get(1).find(number).finish());
      beside.withdraw(number, new Withdrawal(10, 20, "K-3", "clamp was dropped"));
      bench.settle();
      assertNull(bench.calibrations.get(2).inUse(Channel.VOLTAGE, Long.MAX_VALUE));
      for (int i = 0; i < 130; i++) {
        bench.settle();
      }
      assertEquals(4, bench.calibrations.size(), "once more after a minute, for the due date");
    }
  }
}
