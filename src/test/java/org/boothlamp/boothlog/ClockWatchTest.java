package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.boothlog.WriterBench.MachineClock;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Boots without a clock battery. Second 0 of the monotonic clock is FIRST_WALL_MILLIS in truth. */
class ClockWatchTest {

  private static final long HOUR_MILLIS = 3_600_000;

  @TempDir Path folder;

  private Path path() {
    return folder.resolve(BoothLog.FILE_NAME);
  }

  private static void weld(WriterBench bench, double startSeconds, String trainee) {
    bench.offer(started(startSeconds, trainee), ended(startSeconds, 5, SegmentEnd.ARC_OFF));
    bench.settleFor(1.5);
  }

  private static List<Long> starts(ShiftRecords records) {
    return records.runs().stream().map(RunRecord::startWallMillis).toList();
  }

  private long number(String sql) throws Exception {
    try (LogConnection log = LogFile.openForReading(path())) {
      return log.number(sql);
    }
  }

  @Test
  void shouldCorrectTheRowsFromBeforeTheClockWasSet() throws Exception {
    MachineClock machine = new MachineClock(0);
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 10, "A");
      bench.offer(touch(20, 0.1, "A", false));
      bench.settle();
      assertEquals(List.of(), starts(bench.records()), "nobody knows when");
      machine.moveMillis(FIRST_WALL_MILLIS);
      machine.trusted = true;
      bench.settleFor(1.5);
      weld(bench, 30, "B");

      assertEquals(
          List.of(FIRST_WALL_MILLIS + 10_000, FIRST_WALL_MILLIS + 30_000), starts(bench.records()));
      assertEquals(FIRST_WALL_MILLIS + 20_000, bench.records().touches().get(0).startWallMillis());
      assertEquals(List.of(), bench.records().untimed());
    }
    assertEquals(1, number("SELECT count(*) FROM clock_correction"));
    assertEquals(FIRST_WALL_MILLIS, number("SELECT offset_ms FROM clock_correction"));
    assertEquals(
        10_000,
        number(
            "SELECT start_wall_ms - (SELECT sum(offset_ms) FROM clock_correction c"
                + " WHERE c.boot = s.boot) FROM segment s WHERE trainee = 'A'"),
        "as it was first written");
  }

  @Test
  void shouldCorrectASegmentThatWasRunningWhenTheClockWasSet() {
    MachineClock machine = new MachineClock(0);
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      bench.offer(started(10, "A"));
      bench.settleFor(1.5);
      machine.moveMillis(FIRST_WALL_MILLIS);
      machine.trusted = true;
      bench.settleFor(1.5);
      bench.offer(ended(10, 5, SegmentEnd.ARC_OFF));
      bench.settle();
      assertEquals(List.of(FIRST_WALL_MILLIS + 10_000), starts(bench.records()));
    }
  }

  @Test
  void shouldCorrectEarlierStartsSinceTheMachineWasSwitchedOn() {
    try (WriterBench bench = WriterBench.withMachineClock(path(), new MachineClock(0))) {
      weld(bench, 10, "A");
    }
    MachineClock machine = new MachineClock(FIRST_WALL_MILLIS);
    machine.trusted = true;
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 20, "B");
      assertEquals(
          List.of(FIRST_WALL_MILLIS + 10_000, FIRST_WALL_MILLIS + 20_000), starts(bench.records()));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {24 * HOUR_MILLIS, -24 * HOUR_MILLIS, HOUR_MILLIS, -HOUR_MILLIS})
  void shouldNotFollowAClockThatSomebodySetByHand(long moveMillis) {
    MachineClock machine = new MachineClock(FIRST_WALL_MILLIS);
    machine.trusted = true;
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 10, "A");
      machine.moveMillis(moveMillis);
      machine.trusted = false;
      bench.settleFor(1.5);
      weld(bench, 30, "B");

      assertEquals(
          List.of(FIRST_WALL_MILLIS + 10_000, FIRST_WALL_MILLIS + 30_000), starts(bench.records()));
      assertEquals(
          1,
          bench.records().events().stream()
              .filter(event -> event.what().equals("clock stepped"))
              .count());
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {24 * HOUR_MILLIS, -24 * HOUR_MILLIS, HOUR_MILLIS, -HOUR_MILLIS})
  void shouldMoveAllRowsOfTheStartWhenTheTimeServiceCorrectsItself(long moveMillis) {
    MachineClock machine = new MachineClock(FIRST_WALL_MILLIS);
    machine.trusted = true;
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 10, "A");
      machine.moveMillis(moveMillis);
      bench.settleFor(1.5);
      weld(bench, 30, "B");

      assertEquals(
          List.of(FIRST_WALL_MILLIS + moveMillis + 10_000, FIRST_WALL_MILLIS + moveMillis + 30_000),
          starts(bench.records()));
      assertTrue(bench.records().runs().stream().allMatch(run -> run.lengthSeconds() == 5));
    }
  }

  @Test
  void shouldNotBelieveATimeFromBeforeTheProgramExisted() {
    MachineClock machine = new MachineClock(0);
    machine.trusted = true;
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 10, "A");
      assertEquals(1, untimedAt(bench, 0).size());
    }
  }

  private static List<RunRecord> untimedAt(WriterBench bench, long wallMillis) {
    try (BoothLogReader reader = bench.reader()) {
      return reader.read(wallMillis, wallMillis + 24 * HOUR_MILLIS).untimed().stream()
          .flatMap(start -> start.records().runs().stream())
          .toList();
    }
  }

  @Test
  void shouldListAStartWithoutTimeOnTheDaysBetweenItsNeighbours() throws Exception {
    long day = 24 * HOUR_MILLIS;
    bootOn(0, true, "MON");
    bootOn(-100 * day, false, "TUE");
    bootOn(2 * day, true, "WED");
    try (WriterBench bench = WriterBench.withMachineClock(path(), new MachineClock(5 * day))) {
      bench.settle();
      long midnight = FIRST_WALL_MILLIS - 7 * HOUR_MILLIS;
      assertEquals(0, untimedAt(bench, midnight - day).size(), "the day before");
      assertEquals(1, untimedAt(bench, midnight + day).size(), "the day between");
      assertEquals("TUE", untimedAt(bench, midnight + day).get(0).trainee());
      assertEquals(0, untimedAt(bench, midnight + 3 * day).size(), "the day after");
    }
  }

  /** A start on a machine that was switched on for it. */
  private void bootOn(long wallMillis, boolean trusted, String trainee) throws Exception {
    MachineClock machine = new MachineClock(FIRST_WALL_MILLIS + wallMillis);
    machine.trusted = trusted;
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      weld(bench, 10, trainee);
      bench.execute("UPDATE boot SET machine_boot = 'boot ' || id");
    }
  }

  @Test
  void shouldTakeNobodyOverWhileNobodyKnowsWhatDayItIs() throws Exception {
    SignIns.add(path(), "T17", "S-3F-18", "fill", () -> FIRST_WALL_MILLIS);
    try (WriterBench bench = new WriterBench(path())) {
      bench.settle();
      bench.execute("UPDATE sign_in SET machine_boot = 'another'");
    }
    MachineClock machine = new MachineClock(FIRST_WALL_MILLIS);
    try (WriterBench bench = WriterBench.withMachineClock(path(), machine)) {
      bench.settle();
      assertEquals(List.of(), bench.signIns);
      SignIns.add(path(), "T18", "S-3F-18", "fill", () -> FIRST_WALL_MILLIS);
      bench.settle();
      assertEquals(1, bench.signIns.size());
    }
  }
}
