package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.report.Trend.Direction;
import org.junit.jupiter.api.Test;

class ChangeAgainstLastShiftsTest {

  private static EarlierRun onDay(int daysBefore, String pass, double share) {
    long start = EveningShift.at(18, 0, 0).minusDays(daysBefore).toInstant().toEpochMilli();
    return new EarlierRun("T-04", "S-3F-18", "2", pass, start, 20 * share, 20);
  }

  private static List<EarlierRun> runs(int count, int daysBefore, double share) {
    List<EarlierRun> runs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      runs.add(onDay(daysBefore, "fill", share));
    }
    return runs;
  }

  private static ChangeAgainstLastShifts change(List<EarlierRun> now, List<EarlierRun> earlier) {
    return ChangeAgainstLastShifts.of(now, earlier, EveningShift.SPAN);
  }

  /** 56 of 70 less 48 of 80: 0.0524 to 0.3339 (Newcombe 1998, 17:873, method 10, from memory). */
  @Test
  void shouldHaveTheIntervalOfAPublishedDifference() {
    ChangeAgainstLastShifts change = change(runs(70, 0, 56.0 / 70), runs(80, 1, 48.0 / 80));
    assertEquals(0.2, change.change(), 1e-12);
    assertEquals(0.0524, change.low(), 5e-5);
    assertEquals(0.3339, change.high(), 5e-5);
    assertEquals(Direction.BETTER, change.direction());
  }

  @Test
  void shouldNotCallAFewRunsBetterOrWorse() {
    assertEquals(Direction.CANNOT_TELL, change(runs(3, 0, 0.9), runs(3, 1, 0.6)).direction());
    assertEquals(Direction.WORSE, change(runs(30, 0, 0.3), runs(30, 1, 0.9)).direction());
  }

  @Test
  void shouldLookBackAtTheLastFiveDaysWithRuns() {
    List<EarlierRun> earlier = new ArrayList<>(runs(4, 20, 0.1));
    for (int day = 1; day <= 5; day++) {
      earlier.addAll(runs(2, 2 * day, 0.8));
    }
    ChangeAgainstLastShifts change = change(runs(5, 0, 0.8), earlier);
    assertEquals(5, change.days());
    assertEquals(10, change.earlierRuns());
    assertEquals(0.8, change.earlierShare(), 1e-12);
  }

  @Test
  void shouldCompareOnlyPassesThatWereWeldedBothTimes() {
    List<EarlierRun> now = List.of(onDay(0, "fill", 0.9), onDay(0, "cap", 0.1));
    List<EarlierRun> earlier = List.of(onDay(1, "fill", 0.7), onDay(1, "root", 0.2));
    ChangeAgainstLastShifts change = change(now, earlier);
    assertEquals(0.9, change.share(), 1e-12);
    assertEquals(0.7, change.earlierShare(), 1e-12);
    assertEquals(1, change.runs());
  }

  @Test
  void shouldCompareNothingWithNothing() {
    assertNull(change(runs(3, 0, 0.9), List.of()));
    assertNull(change(List.of(), runs(3, 1, 0.9)));
    assertNull(change(runs(3, 0, 0.9), List.of(onDay(1, "root", 0.9))));
    EarlierRun unjudged = new EarlierRun("T-04", "S-3F-18", "2", "fill", 0, 0, 0);
    assertNull(change(List.of(unjudged), runs(3, 1, 0.9)));
  }
}
