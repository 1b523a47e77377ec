package org.boothlamp.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every book of calibrations does. */
public abstract class CalibrationBookContract {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final long BEGUN = 1_772_440_000_000L;

  private static final ReferenceMeter METER =
      new ReferenceMeter("bench, \"meter\"", "M-1", "C-77", DAY.minusMonths(2), 0.5, 3, 0.1);

  /** Every number different from its default, and none of them whole in binary. */
  private static final CalibrationRules RULES =
      new CalibrationRules(
          new AccuracyClass("the school's own", 0.013, 0.007),
          Weighting.BY_UNCERTAINTY,
          6,
          0.83,
          0.0017,
          0.0123,
          3.3,
          new TemperatureAllowance(0.3, 0.0021),
          13,
          11);

  private CalibrationBook book;

  /** The book; a second call gives another look at the same one, as another process has it. */
  protected abstract CalibrationBook open();

  @BeforeEach
  final void openBook() {
    book = open();
  }

  @AfterEach
  final void closeBook() {
    book.close();
  }

  private static CalibrationHead head(Channel channel) {
    ChannelScale nominal = new ChannelScale(-0.2928, 2048.5);
    return new CalibrationHead(
        "B-07",
        channel,
        nominal,
        512.5,
        DAY,
        BEGUN,
        "K-2",
        METER,
        new ChannelScale(-0.2931, 2047.1),
        0,
        RULES);
  }

  private static CalibrationPoint point(double level) {
    return new CalibrationPoint(
        level, Direction.FALLING, 1234.5678901234567, 0.1 + 0.2, 50_000, -0.3, level + 0.1, null);
  }

  private static CalibrationFinish accepted(long wallMillis) {
    return new CalibrationFinish(
        CalibrationFinish.Ending.ACCEPTED,
        wallMillis,
        new ChannelScale(-0.3046, 2049.1),
        new ExpandedUncertainty(1.7, 0.0031),
        DAY.plusMonths(11),
        "");
  }

  private CalibrationRecord record(long number) {
    return book.history().find(number);
  }

  @Test
  void shouldBeEmptyAtFirst() {
    assertEquals(List.of(), book.history().records());
    assertEquals(List.of(), book.checks(Channel.CURRENT));
  }

  @Test
  void shouldGiveNumbersFromOneForBothChannelsTogether() {
    assertEquals(1, book.begin(head(Channel.CURRENT)));
    assertEquals(2, book.begin(head(Channel.VOLTAGE)));
    assertEquals(1, book.history().underWay(Channel.CURRENT).number());
    assertEquals(2, book.history().underWay(Channel.VOLTAGE).number());
  }

  @Test
  void shouldGiveBackExactlyWhatWasWritten() {
    long number = book.begin(head(Channel.VOLTAGE));
    book.addPoint(number, point(0));
    book.addPoint(number, point(101.3));
    CalibrationRecord record = record(number);
    assertEquals(head(Channel.VOLTAGE), record.head());
    assertEquals(List.of(point(0), point(101.3)), record.points());
    assertTrue(record.isUnderWay());
    assertNull(record.withdrawal());
  }

  @Test
  void shouldShowWhatIsWrittenToAnotherReaderAtOnce() {
    long number = book.begin(head(Channel.CURRENT));
    book.addPoint(number, point(50));
    try (CalibrationBook other = open()) {
      assertEquals(List.of(point(50)), other.history().find(number).points());
    }
  }

  @Test
  void shouldKeepAPointThatIsThrownAway() {
    long number = book.begin(head(Channel.CURRENT));
    book.addPoint(number, point(0));
    book.addPoint(number, point(50));
    book.discard(number, 1, "lead slipped; \"ä\"");
    assertEquals(
        List.of(point(0), point(50).discarded("lead slipped; \"ä\"")), record(number).points());
  }

  @Test
  void shouldKeepAPointThatCameAlreadyThrownAway() {
    long number = book.begin(head(Channel.CURRENT));
    book.addPoint(number, point(0).discarded("overload"));
    assertEquals(List.of(point(0).discarded("overload")), record(number).points());
  }

  @Test
  void shouldKeepAnOverloadAndNumbersThatAreNone() {
    long number = book.begin(head(Channel.CURRENT));
    CalibrationPoint overload =
        new CalibrationPoint(500, Direction.RISING, 2047, Double.NaN, 1, 0, 9.9e37, null);
    book.addPoint(number, overload);
    assertEquals(List.of(overload), record(number).points());
  }

  @Test
  void shouldRefuseToThrowAwayWhatIsNotThere() {
    long number = book.begin(head(Channel.CURRENT));
    book.addPoint(number, point(0));
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, 1, "no such"));
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, -1, "no such"));
    book.discard(number, 0, "once");
    assertThrows(IllegalArgumentException.class, () -> book.discard(number, 0, "twice"));
    assertEquals("once", record(number).points().get(0).discardReason());
  }

  @Test
  void shouldEndWithTheNumbersOfTheFinish() {
    long number = book.begin(head(Channel.CURRENT));
    book.finish(number, accepted(BEGUN + 1000));
    assertEquals(accepted(BEGUN + 1000), record(number).finish());
    assertTrue(record(number).isAccepted());
    assertNull(book.history().underWay(Channel.CURRENT));
    assertEquals(number, book.history().inUse(Channel.CURRENT, BEGUN + 1000).number());
    assertNull(book.history().inUse(Channel.CURRENT, BEGUN + 999));
    assertNull(book.history().inUse(Channel.VOLTAGE, BEGUN + 1000));
  }

  @Test
  void shouldEndOnlyOnce() {
    long number = book.begin(head(Channel.CURRENT));
    CalibrationFinish abandoned = CalibrationFinish.abandoned(BEGUN + 1, "load bank broke");
    book.finish(number, abandoned);
    assertThrows(IllegalStateException.class, () -> book.finish(number, accepted(BEGUN + 2)));
    assertEquals(abandoned, record(number).finish());
    assertFalse(record(number).isAccepted());
  }

  @Test
  void shouldFallBackToTheOneBeforeAfterAWithdrawal() {
    long first = book.begin(head(Channel.CURRENT));
    book.finish(first, accepted(BEGUN + 1));
    long second = book.begin(head(Channel.CURRENT));
    book.finish(second, accepted(BEGUN + 1000));
    Withdrawal withdrawal = new Withdrawal(BEGUN + 2000, BEGUN + 3000, "K-2", "meter was broken");
    book.withdraw(second, withdrawal);
    assertEquals(withdrawal, record(second).withdrawal());
    assertEquals(second, book.history().inUse(Channel.CURRENT, BEGUN + 1999).number());
    assertEquals(first, book.history().inUse(Channel.CURRENT, BEGUN + 2000).number());
  }

  @Test
  void shouldWithdrawOnlyWhatIsAcceptedAndOnlyOnce() {
    Withdrawal withdrawal = new Withdrawal(BEGUN, BEGUN, "K-2", "why not");
    long refused = book.begin(head(Channel.CURRENT));
    assertThrows(IllegalStateException.class, () -> book.withdraw(refused, withdrawal));
    book.finish(refused, CalibrationFinish.abandoned(BEGUN, "no"));
    assertThrows(IllegalStateException.class, () -> book.withdraw(refused, withdrawal));
    long accepted = book.begin(head(Channel.CURRENT));
    book.finish(accepted, accepted(BEGUN));
    book.withdraw(accepted, withdrawal);
    assertThrows(IllegalStateException.class, () -> book.withdraw(accepted, withdrawal));
  }

  @Test
  void shouldKeepChecksByChannelInOrder() {
    CalibrationCheck first =
        new CalibrationCheck(
            Channel.CURRENT, 0, BEGUN, "K-2", "bench meter", 100.1, 99.3, 0.7, 50_000, 2.3);
    CalibrationCheck second =
        new CalibrationCheck(
            Channel.CURRENT, 0, BEGUN + 9, "K-3", "", 200.1, 199.3, 0.7, 50_000, 2.3);
    CalibrationCheck volts =
        new CalibrationCheck(
            Channel.VOLTAGE, 0, BEGUN + 5, "K-2", "bench meter", 24.1, 24.3, 0.1, 50_000, 0.5);
    book.addCheck(first);
    book.addCheck(volts);
    book.addCheck(second);
    assertEquals(List.of(first, second), book.checks(Channel.CURRENT));
    assertEquals(List.of(volts), book.checks(Channel.VOLTAGE));
  }
}
