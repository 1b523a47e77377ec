package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChannelScaleTest {

  @Test
  void shouldTakeTheZeroOffBeforeTheGain() {
    assertEquals(100, new ChannelScale(0.5, 2_048).toUnits(2_248), 0);
    assertEquals(-100, new ChannelScale(-0.5, 2_048).toUnits(2_248), 0);
  }

  @Test
  void shouldFindTheCountOfAValue() {
    ChannelScale scale = new ChannelScale(-0.25, 2_047.5);
    assertEquals(123.5, scale.toUnits(scale.toCount(123.5)), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "NaN, 0", "Infinity, 0", "1, NaN", "1, -Infinity"})
  void shouldRefuseAScaleThatIsNoLine(double unitsPerCount, double zeroCount) {
    assertThrows(IllegalArgumentException.class, () -> new ChannelScale(unitsPerCount, zeroCount));
  }
}
