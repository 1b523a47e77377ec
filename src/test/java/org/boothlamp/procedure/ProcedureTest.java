package org.boothlamp.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ProcedureTest {

  @Test
  void shouldFindAPassByItsName() {
    Pass fill = Plans.pass(Plans.amps(95, 125));
    Procedure procedure =
        new Procedure(
            "S-1",
            "1",
            Process.MAG,
            Polarity.DC_PLUS,
            Characteristic.CONSTANT_VOLTAGE,
            Double.NaN,
            List.of(fill));
    assertSame(fill, procedure.pass("fill"));
    assertNull(procedure.pass("root"));
  }

  @Test
  void shouldFindAWindowByItsQuantity() {
    Window amps = Plans.amps(95, 125);
    Pass pass = Plans.pass(amps);
    assertSame(amps, pass.window(Quantity.AMPS));
    assertNull(pass.window(Quantity.VOLTS));
  }

  @Test
  void shouldNotChangeWithTheListItWasMadeFrom() {
    List<Window> windows = new ArrayList<>(List.of(Plans.amps(95, 125)));
    Pass pass = new Pass("fill", windows, Double.NaN, Double.NaN);
    windows.clear();
    assertEquals(1, pass.windows().size());
  }

  @ParameterizedTest
  @CsvSource({"125, 95", "95, 95", "-1, 95", "NaN, 95", "95, NaN", "95, Infinity"})
  void shouldRefuseAWindowThatHoldsNothing(double low, double high) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> Plans.amps(low, high));
    assertTrue(refused.getMessage().contains("amps low=" + low), refused.getMessage());
    assertTrue(refused.getMessage().contains("high=" + high), refused.getMessage());
  }

  @Test
  void shouldTellTheWidthOfAWindow() {
    assertEquals(30, Plans.amps(95, 125).width(), 0);
  }

  @ParameterizedTest
  @EnumSource
  void shouldFindAProcessByItsNumber(Process process) {
    assertSame(process, Process.ofNumber(process.number()));
  }

  @ParameterizedTest
  @EnumSource
  void shouldFindACharacteristicByItsWord(Characteristic characteristic) {
    assertSame(characteristic, Characteristic.ofWord(characteristic.word()));
  }

  @Test
  void shouldNotGuessAtUnknownWords() {
    assertNull(Process.ofNumber("999"));
    assertNull(Characteristic.ofWord("CC"));
  }

  @Test
  void shouldLetOnlyTigBurnAtLowCurrent() {
    assertTrue(Process.TIG.isTig() && Process.TIG_NO_FILLER.isTig());
    assertFalse(Process.MAG.isTig() || Process.PLASMA.isTig());
  }
}
