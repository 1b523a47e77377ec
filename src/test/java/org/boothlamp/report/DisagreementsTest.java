package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.junit.jupiter.api.Test;

class DisagreementsTest {

  private static final CalibrationFinish SIGNED = CalibrationSamples.accepted().finish();

  private static List<String> of(CalibrationRecord record, CalibrationFinish finish) {
    CalibrationRecord changed =
        new CalibrationRecord(record.number(), record.head(), record.points(), finish, null);
    return Disagreements.of(changed, changed.evaluate());
  }

  private static List<String> signed(
      ChannelScale scale, ExpandedUncertainty uncertainty, LocalDate due) {
    CalibrationFinish finish =
        new CalibrationFinish(
            CalibrationFinish.Ending.ACCEPTED, SIGNED.wallMillis(), scale, uncertainty, due, "");
    return of(CalibrationSamples.accepted(), finish);
  }

  @Test
  void shouldFindNoneInWhatWasSignedFromTheSamePoints() {
    assertEquals(List.of(), of(CalibrationSamples.accepted(), SIGNED));
    assertEquals(
        List.of(), of(CalibrationSamples.refused(), CalibrationSamples.refused().finish()));
  }

  @Test
  void shouldOverlookTheLastDigitsOfAnotherOrderOfAddingUp() {
    ChannelScale scale =
        new ChannelScale(
            SIGNED.scale().unitsPerCount() * (1 + 1e-12), SIGNED.scale().zeroCount() + 1e-9);
    assertEquals(List.of(), signed(scale, SIGNED.uncertainty(), SIGNED.nextDue()));
  }

  @Test
  void shouldNameEachNumberThatDiffers() {
    ChannelScale zero = new ChannelScale(SIGNED.scale().unitsPerCount(), 2_063);
    assertStarts("count at zero: ", signed(zero, SIGNED.uncertainty(), SIGNED.nextDue()));
    ExpandedUncertainty narrow = new ExpandedUncertainty(SIGNED.uncertainty().constant(), 0);
    assertStarts("U at full scale, A: ", signed(SIGNED.scale(), narrow, SIGNED.nextDue()));
    assertStarts(
        "next due: the record says 2030-01-01",
        signed(SIGNED.scale(), SIGNED.uncertainty(), LocalDate.of(2030, 1, 1)));
  }

  @Test
  void shouldSayThatWhatWasAcceptedWouldBeRefusedToday() {
    assertStarts(
        "the record says accepted, the points computed again are refused: the sensor must",
        of(CalibrationSamples.refused(), SIGNED));
  }

  @Test
  void shouldSayThatWhatWasRefusedWouldBeAcceptedToday() {
    CalibrationFinish refused = CalibrationSamples.refused().finish();
    assertEquals(
        List.of("the record says refused, the points computed again are accepted"),
        of(CalibrationSamples.accepted(), refused));
  }

  @Test
  void shouldCompareNothingWhereNothingWasSigned() {
    assertEquals(List.of(), of(CalibrationSamples.accepted(), null));
    CalibrationFinish abandoned = CalibrationFinish.abandoned(0, "later");
    assertEquals(List.of(), of(CalibrationSamples.accepted(), abandoned));
  }

  private static void assertStarts(String start, List<String> found) {
    assertTrue(!found.isEmpty() && found.get(0).startsWith(start), found.toString());
  }
}
