package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import org.boothlamp.report.EventRecord;
import org.boothlamp.testing.ConverterBooth;
import org.boothlamp.testing.FakeConverters;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program as a user starts it, reading a converter through Pi4J and the real open and ioctl
 * calls on {@code /dev/spidev0.0}.
 */
@Tag("quiet")
class SpiFuseIT {

  private static final int INPUT_OUTPUT_ERROR = 5;
  private static final int ZERO_COUNT = 2_048;
  private static final double AMPS_PER_COUNT = 1_200.0 / 4_096;
  private static final double VOLTS_PER_COUNT = 100.0 / 4_096;

  @TempDir Path folder;

  private ConverterBooth booth;
  private FakeConverters.Converter converter;

  @BeforeEach
  void setUp() throws Exception {
    booth = new ConverterBooth(folder);
    converter = booth.converters().spi();
    source(1_000_000, 1_000);
    weld(110, 23);
  }

  @AfterEach
  void end() throws IOException {
    booth.close();
  }

  private void source(int clockHz, int pairsPerSecond) {
    booth.source(
        """
        [source]
        kind = "spi"
        device = "mcp3208"
        clock_hz = %d
        current_channel = 2
        voltage_channel = 5
        pairs_per_second = %d
        [current]
        amps_per_count = 0.29296875
        zero_count = 2048
        [voltage]
        volts_per_count = 0.0244140625
        zero_count = 2048
        """
            .formatted(clockHz, pairsPerSecond));
  }

  private void weld(double amps, double volts) throws IOException {
    converter.setInput(2, ZERO_COUNT + Math.round(amps / AMPS_PER_COUNT), 3);
    converter.setInput(5, ZERO_COUNT + Math.round(volts / VOLTS_PER_COUNT), 8);
  }

  @Test
  void shouldReadValuesAndNoiseAndSayHowEvenly() throws Exception {
    CheckedText source = new CheckedText(booth.checkedSource());
    assertEquals(110, source.number("current ([0-9.]+) A"), 0.15);
    assertEquals(3 * AMPS_PER_COUNT, source.number("noise ([0-9.]+) A"), 0.05);
    assertEquals(23, source.number("voltage ([0-9.]+) V"), 0.02);
    assertEquals(8 * VOLTS_PER_COUNT, source.number("noise ([0-9.]+) V"), 0.02);
    source.contains("mcp3208 at /dev/spidev0.0, 1000 pairs/s");
    source.contains("counts 0 to 4095");
    double rate = source.number("([0-9]+) of 1000 pairs/s over the last 3 s");
    assertTrue(rate > 100 && rate < 1_010, "a busy machine is slow, but never fast: " + rate);
    assertTrue(converter.state().startsWith("mode=0 clock=1000000 "), converter.state());
  }

  @Test
  void shouldNeverBeGreenWhileTheConverterIsInTrouble() throws Exception {
    booth.run();
    booth.breakAndMend(broken -> converter.setFailure(broken ? INPUT_OUTPUT_ERROR : 0));
    booth.breakAndMend(converter::setGone);
    booth.breakAndMend(converter::setIdle);
    weld(140, 23);
    booth.awaitSignal("red");
    booth.stop();
    assertEquals(3, booth.events("no samples").size());
    for (EventRecord silence : booth.events("no samples")) {
      assertTrue(silence.fault());
      assertEquals(2, silence.lengthSeconds(), 1, "it lasted 1.5 s and was opened again after it");
    }
  }

  /** FUSE takes some 14,000 transfers a second on a fast machine, and these are 80,000. */
  @Test
  void shouldSayThatARateBeyondReachIsNotHeld() throws Exception {
    source(2_000_000, 40_000);
    JsonNode finding = booth.checkedSource();
    assertEquals("note", finding.path("state").asText(), finding.toString());
    String trouble = finding.path("next_move").asText();
    assertTrue(trouble.contains("asked for 40000 pairs/s, achieved "), finding.toString());
    assertTrue(trouble.endsWith("; lower source.pairs_per_second"), finding.toString());

    booth.run();
    booth.awaitSignal("fault");
    EventRecord begun = booth.awaitEvent("rate not held");
    assertTrue(Double.isNaN(begun.lengthSeconds()), "it has not ended");
    assertTrue(begun.detail().contains("asked for 40000 pairs/s, achieved "), begun.detail());
    assertTrue(booth.awaitEvent("sampling").detail().contains(" of 40000 pairs/s over the last"));
    booth.stop();
    EventRecord ended = booth.events("rate not held").get(0);
    assertTrue(ended.lengthSeconds() > 5, "it lasts to the end: " + ended);
    assertTrue(ended.count() > 10_000 * ended.lengthSeconds(), "pairs that are missing: " + ended);
  }
}
