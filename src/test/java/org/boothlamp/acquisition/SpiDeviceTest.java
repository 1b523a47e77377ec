package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpiDeviceTest {

  private static final HexFormat HEX = HexFormat.ofDelimiter(" ");

  /** Microchip DS21298E, page 21: five zeros, start, SGL, D2 / D1, D0 / don't care. */
  @ParameterizedTest
  @CsvSource({
    "0, 06 00 00", "1, 06 40 00", "2, 06 80 00", "3, 06 c0 00",
    "4, 07 00 00", "5, 07 40 00", "6, 07 80 00", "7, 07 c0 00",
  })
  void shouldAskTheMcp3208AsItsDataSheetSays(int channel, String frame) {
    assertEquals(frame, request(SpiDevice.MCP3208, channel));
  }

  /** Microchip DS21295, figure 6-1: seven zeros and start / SGL, D2, D1, D0; from memory. */
  @ParameterizedTest
  @CsvSource({"0, 01 80 00", "1, 01 90 00", "4, 01 c0 00", "7, 01 f0 00"})
  void shouldAskTheMcp3008AsItsDataSheetSays(int channel, String frame) {
    assertEquals(frame, request(SpiDevice.MCP3008, channel));
  }

  private static String request(SpiDevice device, int channel) {
    byte[] frame = new byte[SpiDevice.FRAME_BYTES];
    device.request(channel, frame);
    return HEX.formatHex(frame);
  }

  /**
   * Code = 4096 VIN / VREF, DS21298 section 4, from memory: 2.5 V and one step of 5 V, 1.024 V of
   * 4.096 V, 1.65 V of 3.3 V, and full scale. The three undefined bits are ones here.
   */
  @ParameterizedTest
  @CsvSource({
    "2.5, 5, 00 e8 00",
    "0.001220703125, 5, ff e0 01",
    "1.024, 4.096, 00 e4 00",
    "1.65, 3.3, 00 e8 00",
    "4.999, 5, 00 ef ff",
    "0, 5, 00 e0 00",
  })
  void shouldReadCodesOfTheMcp3208(double volts, double reference, String frame) {
    byte[] answer = HEX.parseHex(frame);
    assertTrue(SpiDevice.MCP3208.isAnswer(answer));
    int code = (int) Math.min(4_095, Math.round(4_096 * volts / reference));
    assertEquals(code, SpiDevice.MCP3208.count(answer));
  }

  @ParameterizedTest
  @CsvSource({"00 f8 00, 0", "00 fb ff, 1023", "00 f9 23, 291"})
  void shouldReadCodesOfTheMcp3008(String frame, int code) {
    byte[] answer = HEX.parseHex(frame);
    assertTrue(SpiDevice.MCP3008.isAnswer(answer));
    assertEquals(code, SpiDevice.MCP3008.count(answer));
  }

  @Test
  void shouldSeeThatALineHeldHighIsNoAnswer() {
    byte[] ones = HEX.parseHex("ff ff ff");
    assertFalse(SpiDevice.MCP3208.isAnswer(ones));
    assertFalse(SpiDevice.MCP3008.isAnswer(ones));
  }

  @Test
  void shouldKnowItsHighestCount() {
    assertEquals(4_095, SpiDevice.MCP3208.highestCount());
    assertEquals(1_023, SpiDevice.MCP3008.highestCount());
  }
}
