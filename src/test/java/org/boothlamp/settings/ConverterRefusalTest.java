package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.boothlamp.acquisition.ChannelPair;
import org.boothlamp.acquisition.I2cAddress;
import org.boothlamp.acquisition.I2cDevice;
import org.boothlamp.acquisition.I2cSampling;
import org.boothlamp.acquisition.IioAddress;
import org.boothlamp.acquisition.SpiAddress;
import org.boothlamp.acquisition.SpiDevice;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConverterRefusalTest {

  /** Lines 1 to 6; the source begins on line 7, its kind is on line 8. */
  private static final String SCALES =
      """
      [booth]
      id = "B-07"
      [voltage]
      volts_per_count = 0.05
      [current]
      amps_per_count = 0.25
      [source]
      """;

  private static final String INPUTS = "current_channel = 0\nvoltage_channel = 1\n";
  private static final String SPI = SCALES + "kind = \"spi\"\ndevice = \"mcp3208\"\n" + INPUTS;
  private static final String I2C = SCALES + "kind = \"i2c\"\ndevice = \"ads1115\"\n" + INPUTS;
  private static final String IIO =
      SCALES + "kind = \"iio\"\nname = \"adc\"\n" + INPUTS + "pairs_per_second = 1000\n";

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "booth.toml", BoothSettingsFile::read);
  }

  private SourceSettings read(String text) {
    return BoothSettingsFile.read(refusals.write(text)).source();
  }

  @Test
  void shouldFillInTheDefaultsOfConverters() {
    ChannelPair channels = new ChannelPair(0, 1);
    assertEquals(
        new SpiSourceSettings(new SpiAddress(0, 0, 1_000_000), SpiDevice.MCP3208, channels, 5_000),
        read(SPI));
    assertEquals(
        new I2cSourceSettings(
            new I2cAddress(1, 0x48), I2cDevice.ADS1115, new I2cSampling(channels, 250, 4.096, 860)),
        read(I2C));
    assertEquals(
        new IioSourceSettings(new IioAddress(Path.of("/"), "adc", ""), channels, 1_000), read(IIO));
  }

  @Test
  void shouldLowerTheDefaultRateToWhatTheBusCarries() {
    assertEquals(2_083, ((SpiSourceSettings) read(SPI + "clock_hz = 100000\n")).pairsPerSecond());
    assertEquals(
        237, ((I2cSourceSettings) read(I2C + "data_rate = 475\n")).sampling().pairsPerSecond());
  }

  @Test
  void shouldNeedADeviceAndItsInputs() {
    assertEquals(
        """
        booth.toml:7: source.device: is missing; write e.g. device = "mcp3208"
        booth.toml:7: source.current_channel: is missing; write e.g. current_channel = 0
        booth.toml:7: source.voltage_channel: is missing; write e.g. voltage_channel = 1""",
        refusals.of(SCALES + "kind = \"spi\"\n"));
    assertEquals(
        """
        booth.toml:7: source.name: is missing; write e.g. name = "mcp3208"
        booth.toml:7: source.pairs_per_second: is missing; write e.g. pairs_per_second = 1000
        booth.toml:7: source.current_channel: is missing; write e.g. current_channel = 0
        booth.toml:7: source.voltage_channel: is missing; write e.g. voltage_channel = 1""",
        refusals.of(SCALES + "kind = \"iio\"\n"));
  }

  @Test
  void shouldNeedScalesBesideAConverter() {
    String text = "[booth]\nid = \"B\"\n[source]\nkind = \"i2c\"\ndevice = \"ads1015\"\n";
    assertEquals(
        """
        booth.toml:1: current.amps_per_count: is missing; write e.g. amps_per_count = 0.29296875 in \
        a section [current]
        booth.toml:1: voltage.volts_per_count: is missing; write e.g. volts_per_count = \
        0.0244140625 in a section [voltage]""",
        refusals.of(text + INPUTS));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "bus = 7|bus: must be a whole number from 0 to 6, but is 7; write e.g. bus = 0",
        "chip_select = 3|chip_select: must be a whole number from 0 to 2, but is 3; write e.g."
            + " chip_select = 0",
        "clock_hz = 3600000|clock_hz: must be a whole number from 10000 to 2000000 Hz, but is"
            + " 3600000; write e.g. clock_hz = 1000000",
        "pairs_per_second = 100|pairs_per_second: must be a whole number from 200 to 50000, but is"
            + " 100; write e.g. pairs_per_second = 5000",
        "pairs_per_second = 25000|pairs_per_second: must be at most 20833 with a clock of 1000000"
            + " Hz, but is 25000; write a lower rate, well below that",
        "address = 0x48|address: belongs to kind \"i2c\", but kind is \"spi\"; remove it, or put #"
            + " before it",
        "clock = 5|clock: is not known; remove it (known here: kind, device, bus, chip_select,"
            + " clock_hz, pairs_per_second, current_channel, voltage_channel)",
      })
  void shouldRefuseWrongValuesOfAnSpiConverter(String line, String message) {
    assertEquals("booth.toml:12: source." + message, refusals.of(SPI + line + "\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "address = 0x50|address: must be a whole number from 72 to 75 (0x48 to 0x4B), but is 80;"
            + " write e.g. address = 72",
        "gain_v = 5|gain_v: must be one of 0.256, 0.512, 1.024, 2.048, 4.096, 6.144, but is 5;"
            + " write e.g. gain_v = 4.096",
        "gain_v = 10|gain_v: must be a number from 0.256 to 6.144 V, but is 10; write e.g. gain_v"
            + " = 4.096",
        "data_rate = 500|data_rate: must be one of [8, 16, 32, 64, 128, 250, 475, 860], but is 500;"
            + " write e.g. data_rate = 860",
        "data_rate = 3300|data_rate: must be a whole number from 8 to 860, but is 3300; write e.g."
            + " data_rate = 860",
        "pairs_per_second = 500|pairs_per_second: must be at most 430 with a data_rate of 860, but"
            + " is 500; write a lower rate, well below that",
        "bus = \"one\"|bus: must be a whole number from 0 to 255, but is \"one\"; write e.g. bus ="
            + " 1",
        "chip_select = 0|chip_select: belongs to kind \"spi\", but kind is \"i2c\"; remove it, or"
            + " put # before it",
      })
  void shouldRefuseWrongValuesOfAnI2cConverter(String line, String message) {
    assertEquals("booth.toml:12: source." + message, refusals.of(I2C + line + "\n"));
  }

  @Test
  void shouldRefuseADataRateThatIsTooSlowForAnyPairs() {
    assertEquals(
        "booth.toml:7: source.pairs_per_second: must be at most 64 with a data_rate of 128, but is"
            + " 250; raise that first: a source must give at least 200",
        refusals.of(I2C + "data_rate = 128\n"));
  }

  @Test
  void shouldRefuseOneInputForBothChannels() {
    assertEquals(
        "booth.toml:11: source.voltage_channel: must be another input than current_channel, but"
            + " both are 0; give the number of the input that the divider is wired to",
        refusals.of(SPI.replace("voltage_channel = 1", "voltage_channel = 0")));
    assertEquals(
        "booth.toml:11: source.voltage_channel: must be a whole number from 0 to 3, but is 4; write"
            + " e.g. voltage_channel = 1",
        refusals.of(I2C.replace("voltage_channel = 1", "voltage_channel = 4")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "trigger = 5|trigger: must be a text in quotes, 1 to 40 characters without line breaks and"
            + " without blanks at either end, but is 5; write e.g. trigger = \"booth-timer\"",
        "root = \"~/x\"|root: must be a text in quotes, a path that does not begin with ~, but is"
            + " \"~/x\"; write e.g. root = \"/\"",
        "device = \"mcp3208\"|device: belongs to kind \"spi\", but kind is \"iio\"; remove it, or"
            + " put # before it",
      })
  void shouldRefuseWrongValuesOfAKernelDevice(String line, String message) {
    assertEquals("booth.toml:13: source." + message, refusals.of(IIO + line + "\n"));
  }

  @Test
  void shouldRefuseALampOnABoardThatIsNotThere() {
    assertEquals(
        "booth.toml:13: lamp.outputs: \"serial\" is the lamp on the board that the samples come"
            + " from, but source.kind is not \"serial\"; take \"serial\" out of the list, or write"
            + " kind = \"serial\" in [source]",
        refusals.of(SPI + "[lamp]\noutputs = [\"serial\"]\n"));
  }
}
