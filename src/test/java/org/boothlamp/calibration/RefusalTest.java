package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every reason to refuse a calibration, each alone, with its number and the next move. */
class RefusalTest {

  private static void assertRefused(
      CalibrationOutcome outcome, RefusalReason reason, String... words) {
    List<Refusal> refusals = outcome.verdict().refusals();
    assertEquals(
        List.of(reason), refusals.stream().map(Refusal::reason).toList(), refusals::toString);
    assertTrue(outcome.verdict().isRefusedFor(reason));
    for (String word : words) {
      assertTrue(refusals.get(0).message().contains(word), refusals.get(0).message());
    }
  }

  private static CalibrationRun without(CalibrationRun run, double level) {
    return run.withPoints(
        run.points().stream()
            .map(p -> p.level() == level ? p.discarded("not this one") : p)
            .toList());
  }

  private static CalibrationRun withFirst(
      CalibrationRun run, UnaryOperator<CalibrationPoint> change) {
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    points.set(0, change.apply(points.get(0)));
    return run.withPoints(points);
  }

  private static CalibrationRun withMeter(ReferenceMeter meter) {
    CalibrationRun run = Runs.soundClamp();
    return new CalibrationRun(
        run.channel(), run.nominal(), run.fullScale(), run.date(), "T7", meter, run.points());
  }

  private static ReferenceMeter certified(LocalDate date) {
    return new ReferenceMeter("bench meter", "M-1", "C-77", date, 0.1, 3, 0.1);
  }

  @Test
  void shouldRefuseFourLevels() {
    CalibrationRun run = Runs.clamp(4, 400, Runs::lowByFourPercent, 0.2);
    assertRefused(Runs.evaluate(run), RefusalReason.TOO_FEW_LEVELS, "5", "4", "take points");
  }

  @Test
  void shouldNotCountThrownAwayLevels() {
    CalibrationRun run = Runs.clamp(5, 400, Runs::lowByFourPercent, 0.2);
    assertTrue(Runs.evaluate(run).verdict().isAccepted());
    assertRefused(Runs.evaluate(without(run, 200)), RefusalReason.TOO_FEW_LEVELS, "4 are left");
  }

  @Test
  void shouldRefuseARunWithoutAnyPoint() {
    CalibrationRun none = Runs.soundClamp().withPoints(List.of());
    assertRefused(Runs.evaluate(none), RefusalReason.TOO_FEW_LEVELS, "0 are left");
  }

  @Test
  void shouldRefuseASpanOfHalfTheRange() {
    CalibrationRun run = Runs.clamp(6, 200, Runs::lowByFourPercent, 0.2);
    assertRefused(
        Runs.evaluate(run), RefusalReason.SPAN_TOO_SMALL, "320 A", "0 A to 200 A", "400 A");
  }

  @Test
  void shouldRefuseACurrentSensorWithoutZero() {
    CalibrationRun run = without(Runs.clamp(9, 400, Runs::lowByFourPercent, 0.2), 0);
    assertRefused(Runs.evaluate(run), RefusalReason.ZERO_MISSING, "4 A", "no current");
  }

  @Test
  void shouldAcceptAVoltageSensorWithoutZero() {
    CalibrationRun run = without(Runs.clamp(9, 400, Runs::lowByFourPercent, 0.2), 0);
    CalibrationRun volts =
        new CalibrationRun(
            Channel.VOLTAGE, run.nominal(), 400, run.date(), "T7", run.meter(), run.points());
    assertEquals(List.of(), Runs.evaluate(volts).verdict().refusals());
  }

  @Test
  void shouldRefuseALevelApproachedFromOneSideOnly() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    points.removeIf(p -> p.level() == 160 && p.direction() == Direction.FALLING);
    assertRefused(
        Runs.evaluate(run.withPoints(points)),
        RefusalReason.DIRECTION_MISSING,
        "160 A",
        "no falling");
  }

  @Test
  void shouldLetTheTurningLevelsBeTakenOnce() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    points.removeIf(p -> p.level() == 400 && p.direction() == Direction.FALLING);
    points.removeIf(p -> p.level() == 0 && p.direction() == Direction.FALLING);
    assertEquals(List.of(), Runs.evaluate(run.withPoints(points)).verdict().refusals());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 9.9e37, -9.9e37, 9.91e37})
  void shouldRefuseAReferenceThatIsNoNumberOrAnOverload(double reference) {
    CalibrationRun run =
        withFirst(
            Runs.soundClamp(),
            p -> Runs.point(p.level(), p.direction(), p.meanCounts(), reference));
    assertRefused(Runs.evaluate(run), RefusalReason.NOT_MEASURED, "level 0 A", "repeat the point");
  }

  @Test
  void shouldRefuseASensorReadingThatIsNoNumber() {
    CalibrationRun run =
        withFirst(
            Runs.soundClamp(),
            p -> Runs.point(p.level(), p.direction(), Double.NaN, p.reference()));
    assertRefused(Runs.evaluate(run), RefusalReason.NOT_MEASURED, "NaN counts");
  }

  @Test
  void shouldRefuseASensorThatNeverMoves() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> stuck =
        run.points().stream()
            .map(p -> Runs.point(p.level(), p.direction(), 2048, p.reference()))
            .toList();
    assertRefused(Runs.evaluate(run.withPoints(stuck)), RefusalReason.NOT_MEASURED, "is connected");
  }

  @Test
  void shouldRefuseACertificateOutOfDate() {
    ReferenceMeter old = certified(Runs.TODAY.minusMonths(12).minusDays(1));
    assertRefused(
        Runs.evaluate(withMeter(old)),
        RefusalReason.CERTIFICATE_OUT_OF_DATE,
        "C-77",
        "2026-03-01",
        "2026-03-02");
  }

  @Test
  void shouldTakeACertificateOnItsLastDay() {
    ReferenceMeter meter = certified(Runs.TODAY.minusMonths(12));
    assertTrue(Runs.evaluate(withMeter(meter)).verdict().isAccepted());
  }

  @Test
  void shouldRefuseACertificateOfTomorrow() {
    assertRefused(
        Runs.evaluate(withMeter(certified(Runs.TODAY.plusDays(1)))),
        RefusalReason.CERTIFICATE_OUT_OF_DATE,
        "after 2026-03-02");
  }

  @Test
  void shouldRefuseReferenceReadingsInTheWrongUnit() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> milli =
        run.points().stream()
            .map(p -> Runs.point(p.level(), p.direction(), p.meanCounts(), p.reference() * 1000))
            .toList();
    assertRefused(
        Runs.evaluate(run.withPoints(milli)), RefusalReason.GAIN_IMPLAUSIBLE, "1040", "unit");
  }

  @Test
  void shouldRefuseASensorTheWrongWayRound() {
    CalibrationRun run = Runs.clamp(6, 400, amps -> Runs.CLAMP.toCount(-amps), 0.2);
    assertRefused(Runs.evaluate(run), RefusalReason.GAIN_IMPLAUSIBLE, "is -1", "direction");
  }

  @Test
  void shouldRefuseACurvedSensor() {
    CalibrationRun run =
        Runs.clamp(6, 400, amps -> Runs.CLAMP.toCount(amps - 4.0 * amps * amps / 160_000), 0.2);
    assertRefused(Runs.evaluate(run), RefusalReason.CURVED, "0.4 A", "R² = 0.9999");
  }

  /** Less than 0.4 A of 400 is seen, and not worth a refusal. */
  @Test
  void shouldNotRefuseACurveThatDoesNotMatter() {
    CalibrationRun bent =
        Runs.clamp(6, 400, amps -> Runs.CLAMP.toCount(amps - 2.8 * amps * amps / 160_000), 0.2);
    CalibrationOutcome outcome = Runs.evaluate(bent);
    assertTrue(outcome.result().lackOfFit().isSignificant());
    assertTrue(outcome.result().linearityError() < 0.4);
    assertEquals(List.of(), outcome.verdict().refusals());
  }

  @Test
  void shouldRefuseTooMuchHysteresis() {
    CalibrationRun run = Runs.clamp(6, 400, Runs::lowByFourPercent, 5);
    assertRefused(
        Runs.evaluate(run), RefusalReason.HYSTERESIS_TOO_LARGE, "by 4 A", "by 5.", "demagnetise");
  }

  @Test
  void shouldRefuseAReferenceNotGoodEnoughForTheClass() {
    ReferenceMeter coarse = Runs.meter(1, 0, 0.1);
    CalibrationOutcome outcome = Runs.evaluate(withMeter(coarse));
    assertRefused(outcome, RefusalReason.REFERENCE_TOO_COARSE, "4 times", "2.16", "better meter");
    assertTrue(outcome.verdict().testUncertaintyRatio() < 4);
  }

  /** Temperature alone takes 9.8 of the 10 A that the class allows. */
  @Test
  void shouldRefuseWhatTheGuardBandLeavesNoRoomFor() {
    CalibrationRules rules =
        CalibrationRules.STANDARD.withTemperature(new TemperatureAllowance(8.5, 0));
    CalibrationRun run = Runs.soundClamp();
    CalibrationOutcome outcome = Calibration.evaluate(run, run.nominal(), rules);
    assertRefused(outcome, RefusalReason.OUTSIDE_CLASS, "10 A", "guard band");
    assertEquals(Conformity.Decision.UNDECIDED, outcome.verdict().asLeft().decision());
  }

  @Test
  void shouldNameAllReasonsAtOnce() {
    CalibrationRun run =
        new CalibrationRun(
            Channel.CURRENT,
            Runs.CLAMP,
            400,
            Runs.TODAY,
            "T7",
            certified(Runs.TODAY.minusYears(3)),
            without(Runs.clamp(5, 200, Runs::lowByFourPercent, 0.2), 0).points());
    assertEquals(
        List.of(
            RefusalReason.CERTIFICATE_OUT_OF_DATE,
            RefusalReason.TOO_FEW_LEVELS,
            RefusalReason.SPAN_TOO_SMALL,
            RefusalReason.ZERO_MISSING),
        Runs.evaluate(run).verdict().refusals().stream().map(Refusal::reason).toList());
    assertEquals("too-few-levels", RefusalReason.TOO_FEW_LEVELS.word());
    assertFalse(Runs.evaluate(run).verdict().isRefusedFor(RefusalReason.CURVED));
  }

  @Test
  void shouldRefuseRecordsThatCannotBe() {
    assertThrows(IllegalArgumentException.class, () -> Runs.meter(-1, 0, 0.1));
    assertThrows(IllegalArgumentException.class, () -> Runs.meter(1, Double.NaN, 0.1));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ReferenceMeter("", " ", "C-77", Runs.TODAY, 0.1, 3, 0.1));
    assertThrows(IllegalArgumentException.class, () -> new AccuracyClass("none", 0, 0.1));
    assertThrows(IllegalArgumentException.class, () -> new TemperatureAllowance(-1, 0));
    assertThrows(
        IllegalArgumentException.class,
        () -> new CalibrationRun(Channel.CURRENT, Runs.CLAMP, 0, null, "T7", null, List.of()));
  }
}
