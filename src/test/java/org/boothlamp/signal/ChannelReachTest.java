package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ChannelReachTest {

  private static ChannelReach reach(double unitsPerCount, double zeroCount) {
    return new ChannelReach(new ChannelScale(unitsPerCount, zeroCount), -2048, 2047);
  }

  @Test
  void shouldEndOneCountBeforeTheClippedOnes() {
    assertEquals(-2047 * 0.5, reach(0.5, 0).lowest());
    assertEquals(2046 * 0.5, reach(0.5, 0).highest());
    assertEquals(2046 * 0.5, reach(0.5, 0).bothWays());
  }

  @Test
  void shouldTurnWithAReversedChannel() {
    assertEquals(0.5, reach(-0.5, 0).step());
    assertEquals(-2046 * 0.5, reach(-0.5, 0).lowest());
    assertEquals(2047 * 0.5, reach(-0.5, 0).highest());
  }

  @Test
  void shouldLookAtTheSideThatTheCurrentNeeds() {
    ChannelReach shifted = reach(0.1, 1000);
    assertEquals(104.6, shifted.largest(Polarity.DC_PLUS), 1e-9);
    assertEquals(304.7, shifted.largest(Polarity.DC_MINUS), 1e-9);
    assertEquals(104.6, shifted.largest(Polarity.AC), 1e-9);
  }

  @Test
  void shouldReachNothingOnASideThatHasNoCounts() {
    ChannelReach oneSided = new ChannelReach(new ChannelScale(0.1, 0), 0, 4095);
    assertEquals(0, oneSided.largest(Polarity.DC_MINUS));
    assertEquals(0, oneSided.bothWays());
    assertEquals(409.4, oneSided.largest(Polarity.DC_PLUS), 1e-9);
  }

  @Test
  void shouldRefuseARangeOfNoCounts() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> new ChannelReach(new ChannelScale(1, 0), 5, 7));
    assertTrue(refused.getMessage().endsWith("lowest=5, highest=7"), refused.getMessage());
  }
}
