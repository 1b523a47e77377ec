package org.boothlamp.settings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.boothlamp.acquisition.ChannelPair;
import org.boothlamp.acquisition.I2cAddress;
import org.boothlamp.acquisition.I2cDevice;
import org.boothlamp.acquisition.I2cSampling;
import org.boothlamp.acquisition.IioAddress;
import org.boothlamp.acquisition.SpiAddress;
import org.boothlamp.acquisition.SpiDevice;

/** Reads the sources that ask a converter for every pair, or let the kernel do so. */
final class ConverterReader {

  static final List<String> SPI_KEYS =
      List.of(
          "device",
          "bus",
          "chip_select",
          "clock_hz",
          "current_channel",
          "voltage_channel",
          "pairs_per_second");

  static final List<String> I2C_KEYS =
      List.of(
          "device",
          "bus",
          "address",
          "gain_v",
          "data_rate",
          "current_channel",
          "voltage_channel",
          "pairs_per_second");

  static final List<String> IIO_KEYS =
      List.of("name", "trigger", "root", "current_channel", "voltage_channel", "pairs_per_second");

  private static final String PAIRS_PER_SECOND = "pairs_per_second";
  private static final Range SPI_BUS = new Range(0, 6, "");
  private static final Range CHIP_SELECT = new Range(0, 2, "");
  private static final Range I2C_BUS = new Range(0, 255, "");
  private static final Range I2C_ADDRESS = new Range(0x48, 0x4B, "(0x48 to 0x4B)");
  private static final Range IIO_CHANNEL = new Range(0, 63, "");
  private static final Range PAIRS = new Range(200, 50_000, "");
  private static final int LEAST_CLOCK_HZ = 10_000;
  private static final int USUAL_CLOCK_HZ = 1_000_000;

  /** Both channels of a pair are converted by one and the same converter. */
  private static final int CONVERSIONS_A_PAIR = 2;

  private final Section section;
  private final SettingsPaths paths;

  ConverterReader(Section section, SettingsPaths paths) {
    this.section = section;
    this.paths = paths;
  }

  SpiSourceSettings spi() {
    Map<String, SpiDevice> words = new LinkedHashMap<>();
    for (SpiDevice each : SpiDevice.values()) {
      words.put(each.word(), each);
    }
    SpiDevice device = section.requiredWord("device", words);
    Range clocks = new Range(LEAST_CLOCK_HZ, device.mostClockHz(), "Hz");
    SpiAddress address =
        new SpiAddress(
            (int) section.whole("bus", SPI_BUS, 0),
            (int) section.whole("chip_select", CHIP_SELECT, 0),
            (int) section.whole("clock_hz", clocks, USUAL_CLOCK_HZ));
    int most = address.clockHz() / (CONVERSIONS_A_PAIR * SpiDevice.FRAME_CLOCKS);
    int pairs = pairs(5_000, most, "a clock of " + address.clockHz() + " Hz");
    return new SpiSourceSettings(address, device, channels(SpiDevice.CHANNELS), pairs);
  }

  I2cSourceSettings i2c() {
    Map<String, I2cDevice> words = new LinkedHashMap<>();
    for (I2cDevice each : I2cDevice.values()) {
      words.put(each.word(), each);
    }
    I2cDevice device = section.requiredWord("device", words);
    I2cAddress address =
        new I2cAddress(
            (int) section.whole("bus", I2C_BUS, 1),
            (int) section.whole("address", I2C_ADDRESS, 0x48));
    int rate = dataRate(device);
    int pairs = pairs(250, rate / CONVERSIONS_A_PAIR, "a data_rate of " + rate);
    I2cSampling sampling =
        new I2cSampling(channels(I2cDevice.CHANNELS), pairs, fullScaleVolts(), rate);
    return new I2cSourceSettings(address, device, sampling);
  }

  IioSourceSettings iio() {
    String name = section.requiredText("name", TextRule.NAME, "mcp3208");
    String trigger = section.text("trigger", TextRule.NAME, "", "booth-timer");
    int pairs = (int) section.requiredWhole(PAIRS_PER_SECOND, PAIRS, 1_000);
    ChannelPair channels = channels(IIO_CHANNEL);
    IioAddress address = new IioAddress(paths.path(section, "root", "/"), name, trigger);
    return new IioSourceSettings(address, channels, pairs);
  }

  private int dataRate(I2cDevice device) {
    List<Integer> rates = device.rates();
    int fastest = rates.get(rates.size() - 1);
    Range range = new Range(rates.get(0), fastest, "");
    long rate = section.whole("data_rate", range, fastest);
    if (section.isSound("data_rate") && !rates.contains((int) rate)) {
      section.refuse("data_rate", "must be one of " + rates, rate, fastest);
      return fastest;
    }
    return (int) rate;
  }

  private double fullScaleVolts() {
    Map<Double, Double> known = new TreeMap<>();
    I2cDevice.fullScalesVolts().forEach(volts -> known.put(volts, volts));
    double byDefault = 4.096;
    double volts = section.number("gain_v", new Range(0.256, 6.144, "V"), byDefault);
    if (section.isSound("gain_v") && !known.containsKey(volts)) {
      String all = known.keySet().stream().map(Literal::ofNumber).collect(Collectors.joining(", "));
      section.refuse("gain_v", "must be one of " + all, volts, byDefault);
      return byDefault;
    }
    return volts;
  }

  private ChannelPair channels(int inputs) {
    return channels(new Range(0, inputs - 1.0, ""));
  }

  /** No input has a default: amps taken for volts would look like a bad weld. */
  private ChannelPair channels(Range range) {
    int current = (int) section.requiredWhole("current_channel", range, 0);
    int voltage = (int) section.requiredWhole("voltage_channel", range, 1);
    boolean sound = section.isSound("current_channel") && section.isSound("voltage_channel");
    if (sound && current == voltage) {
      section.refuse(
          "voltage_channel",
          "must be another input than current_channel, but both are " + current,
          "give the number of the input that the divider is wired to");
    }
    return new ChannelPair(current, voltage);
  }

  /** More than the bus can carry is refused; what the machine can really hold is measured. */
  private int pairs(int byDefault, int most, String because) {
    int usual = most < PAIRS.low() ? byDefault : Math.min(byDefault, most);
    int pairs = (int) section.whole(PAIRS_PER_SECOND, PAIRS, usual);
    if (section.isSound(PAIRS_PER_SECOND) && pairs > most) {
      section.refuse(
          PAIRS_PER_SECOND,
          "must be at most " + most + " with " + because + ", but is " + pairs,
          most >= PAIRS.low()
              ? "write a lower rate, well below that"
              : "raise that first: a source must give at least 200");
    }
    return pairs;
  }
}
