package org.boothlamp.settings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/** Reads where the pairs come from and what their counts mean. */
final class SourceReader {

  /** The kinds of source, by their word in the file. */
  enum Kind {
    SERIAL("serial", List.of("port", "baud", "lowest_count", "highest_count")),
    SPI("spi", ConverterReader.SPI_KEYS),
    I2C("i2c", ConverterReader.I2C_KEYS),
    IIO("iio", ConverterReader.IIO_KEYS),
    RECORDING("recording", List.of("file", "speed")),
    SIMULATED("simulated", List.of("process", "pairs_per_second", "seed", "speed"));

    private final String word;
    private final List<String> keys;

    Kind(String word, List<String> keys) {
      this.word = word;
      this.keys = keys;
    }
  }

  private static final TextRule PORT = TextRule.PATH;
  private static final String LOWEST_COUNT = "lowest_count";
  private static final String HIGHEST_COUNT = "highest_count";
  private static final Range BAUD = new Range(1_200, 4_000_000, "");
  private static final Range PAIRS_PER_SECOND = new Range(200, 50_000, "");
  private static final Range SEED = new Range(0, Integer.MAX_VALUE, "");

  /** The scale of a 12-bit converter over 1200 A and 100 V: what the simulated booth is read by. */
  private static final double SIMULATED_AMPS_PER_COUNT = 1_200.0 / 4_096;

  private static final double SIMULATED_VOLTS_PER_COUNT = 100.0 / 4_096;

  private static final Range UNITS_PER_COUNT = new Range(1e-6, 10, "");
  private static final Range ZERO_COUNT = new Range(Short.MIN_VALUE, Short.MAX_VALUE, "counts");

  private final Section document;
  private final Section section;
  private final SettingsPaths paths;
  private final Kind kind;

  SourceReader(Section document, SettingsPaths paths) {
    this.document = document;
    this.paths = paths;
    section = document.section("source");
    Kind written = section.requiredWord("kind", kinds());
    kind = section.isSound("kind") ? written : null;
  }

  private static Map<String, Kind> kinds() {
    Map<String, Kind> words = new LinkedHashMap<>();
    for (Kind kind : Kind.values()) {
      words.put(kind.word, kind);
    }
    return words;
  }

  /** The kind, or null if a problem was noted with it. */
  Kind kind() {
    return kind;
  }

  /** The source, or null if its kind is not known. */
  SourceSettings source() {
    if (kind == null) {
      section.passOver();
      return null;
    }
    SourceSettings source =
        switch (kind) {
          case SERIAL -> serial();
          case SPI -> new ConverterReader(section, paths).spi();
          case I2C -> new ConverterReader(section, paths).i2c();
          case IIO -> new ConverterReader(section, paths).iio();
          case RECORDING -> recording();
          case SIMULATED -> simulated();
        };
    refuseKeysOfOtherKinds();
    return source;
  }

  private SerialSourceSettings serial() {
    return new SerialSourceSettings(
        section.requiredText("port", PORT, "/dev/ttyACM0"),
        (int) section.whole("baud", BAUD, 1_000_000),
        counts());
  }

  /** Only for a check without the front end, whose own word counts as soon as it is heard. */
  private CountRange counts() {
    boolean given = section.has(LOWEST_COUNT) || section.has(HIGHEST_COUNT);
    int lowest = (int) section.whole(LOWEST_COUNT, ZERO_COUNT, -2_048);
    int highest = (int) section.whole(HIGHEST_COUNT, ZERO_COUNT, 2_047);
    if (section.has(LOWEST_COUNT) != section.has(HIGHEST_COUNT)) {
      boolean low = section.has(LOWEST_COUNT);
      section.refuse(
          low ? LOWEST_COUNT : HIGHEST_COUNT,
          "needs " + (low ? HIGHEST_COUNT : LOWEST_COUNT) + " beside it",
          "write both, or neither");
    } else if (lowest >= highest) {
      section.refuse(
          HIGHEST_COUNT,
          "must be above lowest_count = " + lowest + ", but is " + highest,
          "write the two ends of the converter's counts, such as -2048 and 2047");
    }
    return given ? new CountRange(lowest, highest) : null;
  }

  private RecordingSourceSettings recording() {
    return new RecordingSourceSettings(
        paths.requiredPath(section, "file", "five-runs.wav"), pace());
  }

  private SimulatedSourceSettings simulated() {
    Map<String, String> processes = new LinkedHashMap<>();
    List.of("stick", "short-arc", "tig").forEach(word -> processes.put(word, word));
    return new SimulatedSourceSettings(
        section.word("process", processes, "stick"),
        (int) section.whole("pairs_per_second", PAIRS_PER_SECOND, 5_000),
        section.whole("seed", SEED, 1),
        pace());
  }

  private Pace pace() {
    Map<String, Pace> words = new LinkedHashMap<>();
    words.put("real-time", Pace.REAL_TIME);
    words.put("full", Pace.FULL);
    return section.word("speed", words, Pace.REAL_TIME);
  }

  /** Each key once, with the first kind that has it. */
  private void refuseKeysOfOtherKinds() {
    for (Kind other : Kind.values()) {
      for (String key : other.keys) {
        if (!kind.keys.contains(key) && section.isSound(key)) {
          section.refuseIfGiven(
              key, "belongs to kind \"" + other.word + "\", but kind is \"" + kind.word + "\"");
        }
      }
    }
  }

  /** The scales, or null if the source is a recording or of no known kind. */
  PairScale scale() {
    if (kind == Kind.RECORDING) {
      refuseScale("current");
      refuseScale("voltage");
      return null;
    }
    ChannelScale current =
        channel(document.section("current"), "amps_per_count", SIMULATED_AMPS_PER_COUNT);
    ChannelScale voltage =
        channel(document.section("voltage"), "volts_per_count", SIMULATED_VOLTS_PER_COUNT);
    return kind == null ? null : new PairScale(current, voltage);
  }

  private void refuseScale(String key) {
    document.refuseIfGiven(
        key,
        "has no meaning with kind \"recording\": the file beside the recording gives its scale");
  }

  private ChannelScale channel(Section channel, String key, double simulated) {
    double unitsPerCount =
        kind == Kind.SIMULATED || kind == null
            ? channel.number(key, UNITS_PER_COUNT, simulated)
            : channel.requiredNumber(key, UNITS_PER_COUNT, simulated);
    double zeroCount = channel.number("zero_count", ZERO_COUNT, 0);
    boolean reversed = channel.flag("reversed", false);
    return new ChannelScale(reversed ? -unitsPerCount : unitsPerCount, zeroCount);
  }
}
