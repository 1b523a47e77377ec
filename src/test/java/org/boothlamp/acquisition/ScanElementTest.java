package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The form of the types: Linux kernel, Documentation/driver-api/iio/buffers.rst. */
class ScanElementTest {

  private static ScanElement element(String type) {
    return ScanElement.parse("in_voltage0_type", 0, type);
  }

  @ParameterizedTest
  @CsvSource({
    "be:u12/16>>0, 0fff, 4095",
    "be:u12/16>>0, f001, 1",
    "le:u12/16>>0, 2301, 291",
    "le:s12/16>>4, f0ff, -1",
    "le:s12/16>>4, 0080, -2048",
    "le:s12/16>>4, f07f, 2047",
    "be:s12/16>>4, 1234, 291",
    "le:s16/16>>0, 0080, -32768",
    "le:s16/16, ff7f, 32767",
    "le:u10/16X1>>2, fc0f, 1023",
    "be:s16/32>>8, 00ffff00, -1",
    "le:s64/64>>0, 0100000000000080, -9223372036854775807",
    "be:s8/8>>0, 80, -128",
  })
  void shouldReadWhatTheKernelStores(String type, String bytes, long value) {
    assertEquals(value, element(type).value(HexFormat.of().parseHex(bytes), 0));
  }

  @Test
  void shouldReadAtAnOffset() {
    assertEquals(0x0234, element("be:u12/16>>0").value(new byte[] {1, 2, (byte) 0x52, 0x34}, 2));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "u12/16", "be:u12/24>>0", "le:s12/16>>5", "be:u12/16X2>>0", "le:x8/8"})
  void shouldRefuseWhatIsNoType(String type) {
    SourceException refused = assertThrows(SourceException.class, () -> element(type));
    assertEquals(
        "in_voltage0_type: must say how one value is stored, such as be:u12/16>>0, and says \""
            + type
            + "\"; use another channel or device",
        refused.getMessage());
  }

  @Test
  void shouldKnowWhatFitsACount() {
    assertTrue(element("le:s16/16>>0").isCount());
    assertTrue(element("le:u15/16>>1").isCount());
    assertFalse(element("le:u16/16>>0").isCount());
    assertFalse(element("le:s24/32>>8").isCount());
    assertEquals(-2_048, element("le:s12/16>>4").lowest());
    assertEquals(4_095, element("be:u12/16>>0").highest());
  }

  /** Each element at a multiple of its size, the whole padded to the largest. */
  @Test
  void shouldAlignTheElementsOfAScan() {
    ScanElement current = ScanElement.parse("", 3, "le:s16/16>>0");
    ScanElement voltage = ScanElement.parse("", 1, "le:s16/32>>0");
    ScanElement stamp = ScanElement.parse("", 7, "le:s64/64>>0");
    ScanLayout layout = new ScanLayout(current, voltage, stamp);
    byte[] scan = HexFormat.of().parseHex("0200000001000000" + "0300000000000000");
    assertEquals(16, layout.bytes());
    assertEquals(2, layout.voltage(scan));
    assertEquals(1, layout.current(scan));
    assertEquals(3, layout.stampNanos(scan));
  }
}
