package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.boothlamp.report.EventRecord;
import org.boothlamp.testing.ConverterBooth;
import org.boothlamp.testing.FakeConverters;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The program as a user starts it, reading a converter through Pi4J and the real open, ioctl, read
 * and write calls on {@code /dev/i2c-1}. Only the native code of the library is the tests' own: it
 * brings its own for ARM alone.
 *
 * <p>The sensors give 10 mV an ampere and 40 mV a volt, whatever the converter's full scale.
 */
@Tag("quiet")
class I2cFuseIT {

  private static final int INPUT_OUTPUT_ERROR = 5;
  private static final int NO_ACKNOWLEDGE = 121;
  private static final double AMPS_PER_VOLT = 100;
  private static final double VOLTS_PER_VOLT = 25;

  @TempDir Path folder;

  private ConverterBooth booth;
  private FakeConverters.Converter converter;

  @BeforeEach
  void setUp() throws Exception {
    booth = new ConverterBooth(folder);
    converter = booth.converters().i2c();
  }

  @AfterEach
  void end() throws IOException {
    booth.close();
  }

  /**
   * A converter with its scale.
   *
   * @param stepMicrovolts of one count: SBAS444D, table "Full-scale range and corresponding LSB
   *     size"; sixteen times that for the twelve bits of an ADS1015
   */
  private void source(String device, int address, String fullScaleVolts, double stepMicrovolts) {
    booth.source(
        String.format(
            Locale.ROOT,
            """
            [source]
            kind = "i2c"
            device = "%s"
            address = %d
            gain_v = %s
            current_channel = 3
            voltage_channel = 1
            pairs_per_second = 200
            [current]
            amps_per_count = %.9f
            [voltage]
            volts_per_count = %.9f
            """,
            device,
            address,
            fullScaleVolts,
            AMPS_PER_VOLT * stepMicrovolts / 1e6,
            VOLTS_PER_VOLT * stepMicrovolts / 1e6));
  }

  private void weld(double amps, double volts) throws IOException {
    converter.setInput(3, Math.round(amps / AMPS_PER_VOLT * 1e6), 20_000);
    converter.setInput(1, Math.round(volts / VOLTS_PER_VOLT * 1e6), 8_000);
  }

  @ParameterizedTest
  @CsvSource({"ads1115, 6.144, 187.5, 16", "ads1115, 2.048, 62.5, 16", "ads1015, 4.096, 2000, 12"})
  void shouldReadTheSameValuesAtEveryGain(
      String device, String fullScaleVolts, double stepMicrovolts, int bits) throws Exception {
    converter.setBits(bits);
    source(device, 0x48, fullScaleVolts, stepMicrovolts);
    weld(110, 23);
    CheckedText source = new CheckedText(booth.checkedSource());
    double halfAStepAmps = AMPS_PER_VOLT * stepMicrovolts / 2e6;
    double halfAStepVolts = VOLTS_PER_VOLT * stepMicrovolts / 2e6;
    assertEquals(110, source.number("current ([0-9.]+) A"), 0.05 + halfAStepAmps);
    assertEquals(2, source.number("noise ([0-9.]+) A"), 0.005 + halfAStepAmps);
    assertEquals(23, source.number("voltage ([0-9.]+) V"), 0.005 + halfAStepVolts);
    assertEquals(0.2, source.number("noise ([0-9.]+) V"), 0.005 + halfAStepVolts);
    source.contains(device + " at /dev/i2c-1 address 0x48, 200 pairs/s");
    source.contains("short circuits are not measured, they need 2000");
    source.contains("current and voltage are taken in turn");
    assertEquals(stepMicrovolts, source.number("exact; ([0-9.]+) µV a count"), 0.1);
    double rate = source.number("([0-9]+) of 200 pairs/s over the last 3 s");
    assertTrue(rate > 20 && rate < 202, "a busy machine is slow, but never fast: " + rate);
    assertTrue(converter.state().startsWith("slave=0x48 "), converter.state());
  }

  @Test
  void shouldSayThatNobodyAcknowledgesAtAnotherAddress() throws Exception {
    source("ads1115", 0x4A, "4.096", 125);
    JsonNode finding = booth.checkedSource();
    assertEquals("bad", finding.path("state").asText(), finding.toString());
    String said = finding.path("detail").asText();
    assertTrue(said.contains("/dev/i2c-1 address 0x4a: writing failed: Remote I/O error"), said);
    assertTrue(said.contains("the address pin is wired as in the settings"), said);
    assertTrue(converter.state().startsWith("slave=0x4a "), converter.state());
  }

  @Test
  void shouldNeverBeGreenWhileTheConverterIsInTroubleAndLogItsLimits() throws Exception {
    source("ads1115", 0x48, "4.096", 125);
    weld(110, 23);
    booth.run();
    booth.breakAndMend(broken -> converter.setFailure(broken ? INPUT_OUTPUT_ERROR : 0));
    booth.breakAndMend(broken -> converter.setFailure(broken ? NO_ACKNOWLEDGE : 0));
    booth.breakAndMend(converter::setGone);
    weld(140, 23);
    booth.awaitSignal("red");
    EventRecord sampling = booth.awaitEvent("sampling");
    assertTrue(sampling.detail().contains(" of 200 pairs/s over the last "), sampling.detail());
    booth.stop();
    assertEquals(3, booth.events("no samples").size());
    for (EventRecord silence : booth.events("no samples")) {
      assertTrue(silence.fault());
      assertEquals(2, silence.lengthSeconds(), 1, "it lasted 1.5 s and was opened again after it");
    }
    String limits = booth.events("started").get(0).detail();
    assertTrue(limits.contains("short circuits are not measured"), limits);
    assertTrue(limits.contains("at most 430 pairs/s"), limits);
    assertFalse(booth.runs().isEmpty());
    assertTrue(booth.runs().stream().allMatch(run -> run.shortCircuits() == -1), "not measured");
  }
}
