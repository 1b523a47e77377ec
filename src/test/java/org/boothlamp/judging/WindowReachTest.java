package org.boothlamp.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.ChannelReach;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.Polarity;
import org.junit.jupiter.api.Test;

class WindowReachTest {

  private static WindowReach reach(double low, double high, double step, Polarity polarity) {
    CautionBand band = new CautionBand(new Window(Quantity.AMPS, low, high), 0.1 * (high - low));
    return new WindowReach(
        band, new ChannelReach(new ChannelScale(step, 0), -2048, 2047), polarity);
  }

  @Test
  void shouldCallACountCoarseAboveATenthOfTheBand() {
    assertFalse(reach(90, 110, 0.2, Polarity.DC_PLUS).isCoarse());
    assertTrue(reach(90, 110, 0.21, Polarity.DC_PLUS).isCoarse());
    assertEquals(10, reach(90, 110, 0.2, Polarity.DC_PLUS).countsABand(), 1e-12);
  }

  @Test
  void shouldClipWhereTheHighLimitIsBeyondTheReach() {
    assertFalse(reach(90, 102.3, 0.05, Polarity.DC_PLUS).isClipped());
    assertTrue(reach(90, 102.4, 0.05, Polarity.DC_PLUS).isClipped());
  }

  @Test
  void shouldNeedThePeakOfAnAlternatingCurrent() {
    assertEquals(100 * Math.sqrt(2), reach(80, 100, 0.05, Polarity.AC).needed(), 1e-12);
    assertTrue(reach(80, 100, 0.05, Polarity.AC).isClipped());
    assertFalse(reach(50, 70, 0.05, Polarity.AC).isClipped());
  }
}
