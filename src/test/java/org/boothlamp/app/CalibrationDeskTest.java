package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.Test;

/** What a booth takes up, and what it writes down, as calibrations come and go. */
class CalibrationDeskTest {

  private static final ChannelScale NOMINAL = new ChannelScale(0.2, 0);
  private static final ExpandedUncertainty U = new ExpandedUncertainty(1, 0);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final LocalDate DUE = LocalDate.of(2027, 3, 2);

  private final List<String> notes = new ArrayList<>();
  private final List<SensorsInUse> taken = new ArrayList<>();
  private LocalDate today = DAY;

  private SensorsInUse pick(CalibrationHistory history) {
    SensorInUse.Fallback fallback =
        new SensorInUse.Fallback(NOMINAL, new ExpandedUncertainty(2.5, 0), 2);
    return new SensorsInUse(
        SensorInUse.of(history, Channel.CURRENT, fallback, 10_000, today),
        SensorInUse.of(history, Channel.VOLTAGE, fallback, 10_000, today));
  }

  private CalibrationDesk desk(CalibrationHistory first) {
    return new CalibrationDesk(
        pick(first),
        this::pick,
        taken::add,
        (kind, detail) -> notes.add(kind.word() + ": " + detail.split(",")[0]));
  }

  private static CalibrationRecord record(long number, Channel channel, Withdrawal withdrawal) {
    return Calibrations.record(
        number,
        Calibrations.head(channel, NOMINAL, DAY),
        Calibrations.accepted(1_000, new ChannelScale(0.2 + number / 100.0, 0), U, DUE),
        withdrawal);
  }

  private static CalibrationHistory history(CalibrationRecord... records) {
    return new CalibrationHistory(List.of(records));
  }

  @Test
  void shouldWriteDownAtTheStartWhatIsMissing() {
    CalibrationHistory first = history(record(1, Channel.CURRENT, null));
    CalibrationDesk desk = desk(first);
    desk.follow(first);
    desk.follow(first);
    assertEquals(List.of("calibration missing: voltage: no calibration"), notes);
    assertEquals(List.of(), taken);
  }

  @Test
  void shouldTakeUpANewCalibrationOnce() {
    CalibrationDesk desk = desk(CalibrationHistory.NONE);
    desk.follow(CalibrationHistory.NONE);
    notes.clear();
    desk.follow(history(record(1, Channel.CURRENT, null)));
    desk.follow(history(record(1, Channel.CURRENT, null)));
    assertEquals(List.of("calibration taken up: current: calibration 1 of 2026-03-02"), notes);
    assertEquals(1, taken.size());
    assertEquals(1, taken.get(0).numbers().current());
  }

  @Test
  void shouldGoBackAfterAWithdrawalAndSayBoth() {
    CalibrationRecord one = record(1, Channel.CURRENT, null);
    CalibrationHistory both = history(one, record(2, Channel.CURRENT, null));
    CalibrationDesk desk = desk(both);
    desk.follow(both);
    notes.clear();
    Withdrawal withdrawal = new Withdrawal(5_000, 6_000, "K-2", "clamp was dropped");
    desk.follow(history(one, record(2, Channel.CURRENT, withdrawal)));
    assertEquals(
        List.of(
            "calibration withdrawn: current: calibration 2 withdrawn by K-2: clamp was dropped",
            "calibration taken up: current: calibration 1 of 2026-03-02"),
        notes);
    assertEquals(1, taken.get(0).numbers().current());
  }

  @Test
  void shouldWidenUWhenTheDueDatePassesAndKeepTheScale() {
    CalibrationHistory both =
        history(record(1, Channel.CURRENT, null), record(2, Channel.VOLTAGE, null));
    CalibrationDesk desk = desk(both);
    desk.follow(both);
    assertEquals(List.of(), notes);
    today = DUE;
    desk.follow(both);
    assertEquals(2, notes.size());
    assertTrue(
        notes.get(0).startsWith("calibration overdue: current: calibration 1"), notes.get(0));
    assertEquals(2, taken.get(0).uncertainties().amps().at(100));
    assertEquals(0.21, taken.get(0).scale().current().unitsPerCount(), 1e-12);
    assertTrue(taken.get(0).uncertainties().calibrated());
  }
}
