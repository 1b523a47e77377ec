package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BeadRuleTest {

  private static BeadRefusedException refused(RunBuilder run, double millimetres) {
    RunRecord built = run.build();
    return assertThrows(BeadRefusedException.class, () -> BeadRule.check(built, millimetres));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 30, 148, 500})
  void shouldTakeLengthsThatAnArcOfTenSecondsCanReach(double millimetres) {
    assertDoesNotThrow(() -> BeadRule.check(run().build(), millimetres));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -148, 0.99, 10_001, Double.NaN, Double.POSITIVE_INFINITY})
  void shouldRefuseLengthsThatNoBeadHas(double millimetres) {
    String why = refused(run(), millimetres).getMessage();
    assertTrue(why.contains("1\u00a0mm to 10000\u00a0mm long"), why);
    assertTrue(why.contains("check the unit"), why);
  }

  @Test
  void shouldRefuseLengthsThatNoArcTravels() {
    String fast = refused(run().length(2), 148).getMessage();
    assertTrue(fast.contains("148\u00a0mm in 2.0\u00a0s of arc would be 4440\u00a0mm/min"), fast);
    assertTrue(fast.contains("number of the run"), fast);
    String slow = refused(run().length(200), 5.8).getMessage();
    assertTrue(slow.contains("2\u00a0mm/min, and arcs travel at 6\u00a0mm/min to"), slow);
  }

  @Test
  void shouldSayARefusalInTheReadersLanguageAndUnits() {
    String why = refused(run().length(2), 148).say(Phrases.in(Language.SPANISH), Units.INCH_POUND);
    assertEquals(
        "5.83\u00a0in en 2.0\u00a0s de arco serían 174.8\u00a0in/min, y un arco avanza de"
            + " 0.2\u00a0in/min a 118.1\u00a0in/min; compruebe el número del cordón y la unidad",
        why);
  }

  @Test
  void shouldWaitForTheEndOfARun() {
    assertTrue(
        refused(run().id(17).end("running"), 148).getMessage().contains("run 17 has no end"));
  }

  @Test
  void shouldRefuseARunWhoseArcTimeWasLost() {
    assertTrue(refused(run().length(Double.NaN), 148).getMessage().contains("was lost"));
    assertTrue(refused(run().length(0), 148).getMessage().contains("was lost"));
    assertTrue(refused(run().energy(Double.NaN), 148).getMessage().contains("was lost"));
  }

  @Test
  void shouldPutANoteOnOneLineAndRefuseALongOne() {
    assertEquals("two lines", BeadRule.note("  two\r\n\tlines "));
    assertEquals("é".repeat(200), BeadRule.note("é".repeat(200)));
    BeadRefusedException refused =
        assertThrows(BeadRefusedException.class, () -> BeadRule.note("x".repeat(201)));
    assertTrue(refused.getMessage().contains("at most 200 characters, and not 201"));
  }
}
