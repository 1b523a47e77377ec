package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationTextTest {

  private static String text(CalibrationSheet sheet) {
    return CalibrationText.render(sheet, 80, Colour.PLAIN);
  }

  @ParameterizedTest
  @ValueSource(strings = {"accepted", "refused", "withdrawn"})
  void shouldTellACalibrationAsAPersonReadsIt(String name) {
    assertEquals(
        CalibrationPageResources.read(name + ".txt"), text(CalibrationPageResources.sheet(name)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"accepted", "refused", "withdrawn"})
  void shouldStayWithinThePage(String name) {
    String text = text(CalibrationPageResources.sheet(name));
    assertEquals(List.of(), text.lines().filter(line -> line.length() > 80).toList());
  }

  @Test
  void shouldSayTheSameWithColourAsWithout() {
    CalibrationSheet sheet = CalibrationPageResources.sheet("accepted");
    String coloured = CalibrationText.render(sheet, 80, Colour.ANSI);
    assertTrue(coloured.contains("\u001b[32mAccepted"), coloured);
    assertEquals(text(sheet), coloured.replaceAll("\u001b\\[[0-9]+m", ""));
  }

  @Test
  void shouldUseAWiderTerminal() {
    CalibrationSheet sheet = CalibrationPageResources.sheet("refused");
    String wide = CalibrationText.render(sheet, 140, Colour.PLAIN);
    assertTrue(wide.lines().anyMatch(line -> line.length() > 80), wide);
    assertTrue(wide.lines().allMatch(line -> line.length() <= 140), wide);
  }

  @Test
  void shouldTellOneThatIsUnderWayBeforeItsFirstPoint() {
    CalibrationRecord open =
        new CalibrationRecord(3, CalibrationSamples.accepted().head(), List.of(), null, null);
    String text = text(CalibrationSamples.bare(open));
    assertTrue(text.contains("\nUnder way\n"), text);
    assertTrue(text.contains("None was taken."), text);
    assertTrue(text.contains("not judged"), text);
    assertFalse(text.contains("BUDGET"), text);
    assertFalse(text.contains("DISAGREE"), text);
  }

  @Test
  void shouldTellWhyOneWasGivenUp() {
    CalibrationFinish finish = CalibrationFinish.abandoned(0, "meter battery empty");
    CalibrationRecord record =
        new CalibrationRecord(3, CalibrationSamples.accepted().head(), List.of(), finish, null);
    String text = text(CalibrationSamples.bare(record));
    assertTrue(text.contains("\nGiven up\n"), text);
    assertTrue(text.contains("- meter battery empty"), text);
  }

  @Test
  void shouldSayThatOneIsOverdueFromItsDayOn() {
    CalibrationRecord record = CalibrationSamples.accepted();
    CalibrationSheet sheet =
        new CalibrationSheet(record, List.of(), CalibrationSamples.ZONE, record.finish().nextDue());
    assertTrue(text(sheet).contains("Accepted, overdue since 2027-03-02"));
  }

  @Test
  void shouldNotLetFreeTextMoveTheCursor() {
    CalibrationRecord record =
        CalibrationSamples.ended(
            4,
            CalibrationSamples.head("K2\u001b[2J", CalibrationSamples.meter("a\rb\u202e\u0000")),
            CalibrationSamples.soundPoints(),
            null);
    String text = text(CalibrationSamples.bare(record));
    assertTrue(text.contains("K2[U+001B][2J"), text);
    assertTrue(text.contains("a[U+000D]b[U+202E][U+0000]"), text);
    assertTrue(text.chars().noneMatch(c -> c < ' ' && c != '\n'), text);
  }

  @Test
  void shouldTellAMissingNumberWithoutALine() {
    CalibrationRecord record =
        CalibrationSamples.ended(
            4, CalibrationSamples.accepted().head(), List.of(CalibrationSamples.overload()), null);
    String text = text(CalibrationSamples.bare(record));
    assertTrue(text.contains("none"), text);
    assertTrue(text.contains("an overload"), text);
    assertFalse(text.contains("FIT"), text);
  }
}
