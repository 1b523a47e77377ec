package org.boothlamp.calibration;

import static org.boothlamp.testing.Calibrations.accepted;
import static org.boothlamp.testing.Calibrations.head;
import static org.boothlamp.testing.Calibrations.record;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.junit.jupiter.api.Test;

/** Which calibration a sensor measures by, and how far it can be trusted. */
class SensorInUseTest {

  private static final ChannelScale NOMINAL = new ChannelScale(0.2, 2048);
  private static final ChannelScale FITTED = new ChannelScale(0.21, 2050);
  private static final ExpandedUncertainty STATED = new ExpandedUncertainty(2.5, 0);
  private static final ExpandedUncertainty OWN = new ExpandedUncertainty(0.6, 0.002);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final LocalDate DUE = LocalDate.of(2027, 3, 2);
  private static final long DONE = 1_000;

  private static CalibrationRecord sound(long number, ChannelScale nominal, Withdrawal withdrawal) {
    return record(
        number, head(Channel.CURRENT, nominal, DAY), accepted(DONE, FITTED, OWN, DUE), withdrawal);
  }

  private static SensorInUse inUse(long wallMillis, LocalDate today, CalibrationRecord... records) {
    return SensorInUse.of(
        new CalibrationHistory(List.of(records)),
        Channel.CURRENT,
        new SensorInUse.Fallback(NOMINAL, STATED, 2),
        wallMillis,
        today);
  }

  @Test
  void shouldMeasureByTheNominalScaleAndTheStatedAccuracyWithoutACalibration() {
    SensorInUse sensor = inUse(DONE, DAY);
    assertEquals(SensorInUse.State.MISSING, sensor.state());
    assertEquals(NOMINAL, sensor.scale());
    assertEquals(STATED, sensor.uncertainty());
    assertEquals(0, sensor.number());
    assertFalse(sensor.isCalibrated());
    assertNull(sensor.due());
    assertEquals(
        "current: no calibration, the nominal scale and the stated U hold", sensor.words());
  }

  @Test
  void shouldMeasureByAnAcceptedCalibrationUpToTheDayBeforeItsDueDate() {
    SensorInUse sensor = inUse(DONE, DUE.minusDays(1), sound(3, NOMINAL, null));
    assertEquals(SensorInUse.State.OK, sensor.state());
    assertEquals(FITTED, sensor.scale());
    assertEquals(OWN, sensor.uncertainty());
    assertEquals(3, sensor.number());
    assertEquals("current: calibration 3 of 2026-03-02, due 2027-03-02", sensor.words());
  }

  @Test
  void shouldWidenUFromTheDueDateOnAndMeasureOn() {
    SensorInUse sensor = inUse(DONE, DUE, sound(3, NOMINAL, null));
    assertEquals(SensorInUse.State.OVERDUE, sensor.state());
    assertEquals(FITTED, sensor.scale());
    assertEquals(new ExpandedUncertainty(1.2, 0.004), sensor.uncertainty());
    assertTrue(sensor.isCalibrated());
    assertEquals(
        "current: calibration 3 of 2026-03-02, overdue since 2027-03-02, U is taken 2 times as"
            + " wide",
        sensor.words());
  }

  @Test
  void shouldGoBackToTheCalibrationBeforeOneThatIsWithdrawn() {
    Withdrawal withdrawal = new Withdrawal(5_000, 6_000, "K-2", "clamp was dropped");
    CalibrationRecord[] records = {sound(1, NOMINAL, null), sound(2, NOMINAL, withdrawal)};
    assertEquals(2, inUse(4_999, DAY, records).number());
    assertEquals(1, inUse(5_000, DAY, records).number());
  }

  @Test
  void shouldNotCountACalibrationForAnotherNominalScaleNorThoseBeforeIt() {
    ChannelScale other = new ChannelScale(0.4, 2048);
    SensorInUse sensor = inUse(DONE, DAY, sound(1, NOMINAL, null), sound(2, other, null));
    assertEquals(SensorInUse.State.MISSING, sensor.state());
    assertEquals(NOMINAL, sensor.scale());
    assertTrue(sensor.words().contains("calibration 2 was made for"), sensor.words());
    assertTrue(sensor.words().contains("0.4 A a count with zero at 2048"), sensor.words());
    assertTrue(sensor.words().contains("0.2 A a count with zero at 2048"), sensor.words());
  }

  @Test
  void shouldNotCountWhatIsRefusedUnderWayOrOfTheOtherChannel() {
    CalibrationFinish refused =
        new CalibrationFinish(
            CalibrationFinish.Ending.REFUSED, DONE, null, null, null, "too few levels");
    SensorInUse sensor =
        inUse(
            DONE,
            DAY,
            record(1, head(Channel.CURRENT, NOMINAL, DAY), refused, null),
            record(2, head(Channel.CURRENT, NOMINAL, DAY), null, null),
            record(3, head(Channel.VOLTAGE, NOMINAL, DAY), accepted(DONE, FITTED, OWN, DUE), null));
    assertEquals(SensorInUse.State.MISSING, sensor.state());
  }

  @Test
  void shouldCallThePairCalibratedOnlyIfBothSensorsAre() {
    SensorInUse with = inUse(DONE, DAY, sound(3, NOMINAL, null));
    SensorInUse without = inUse(DONE, DAY);
    assertTrue(new SensorsInUse(with, with).uncertainties().calibrated());
    assertFalse(new SensorsInUse(with, without).uncertainties().calibrated());
    assertEquals(new CalibrationNumbers(3, 0), new SensorsInUse(with, without).numbers());
    assertEquals(FITTED, new SensorsInUse(with, without).scale().current());
  }
}
