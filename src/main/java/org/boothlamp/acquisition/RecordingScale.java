package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * The file beside a recording that says what its counts mean:
 *
 * <pre>
 * [current]
 * amps_per_count = 0.29296875
 * zero_count = 0.0
 *
 * [voltage]
 * volts_per_count = 0.0244140625
 * zero_count = 0.0
 * </pre>
 *
 * <p>A recording of this program's own may add gaps and what was welded: see {@link
 * RecordingSheet}.
 */
public final class RecordingScale {

  private static final String CURRENT = "current";
  private static final String VOLTAGE = "voltage";
  private static final String AMPS_PER_COUNT = "amps_per_count";
  private static final String VOLTS_PER_COUNT = "volts_per_count";
  private static final String ZERO_COUNT = "zero_count";

  private static final String GAP = "gap";
  private static final String FIRST_PAIR = "first_pair";
  private static final String PAIRS = "pairs";
  private static final String SEGMENT = "segment";

  /** Key of the place of a segment's first pair, in its table. */
  static final String CONTACT_PAIR = "contact_pair";

  private final Path file;
  private final TomlParseResult toml;

  private RecordingScale(Path file, TomlParseResult toml) {
    this.file = file;
    this.toml = toml;
  }

  /** The scale file that belongs to {@code NAME.wav}: {@code NAME.toml}. */
  public static Path fileBeside(Path wav) {
    String name = wav.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return wav.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".toml");
  }

  /**
   * Reads the scale out of a scale file.
   *
   * @throws SourceException if it is missing or anything in it is missing, unknown or impossible
   */
  public static PairScale read(Path file) {
    return readSheet(file).scale();
  }

  /** Reads all of a scale file; the same refusals. */
  static RecordingSheet readSheet(Path file) {
    try {
      RecordingScale scale = new RecordingScale(file, Toml.parse(file));
      scale.refuseSyntaxErrors();
      return new RecordingSheet(scale.pairScale(), scale.gaps(), "", scale.contactPair());
    } catch (NoSuchFileException missing) {
      throw new SourceException(
          Reason.MISSING,
          file.toString(),
          "a recording needs its scale in a TOML file of the same name beside it",
          "write one with [current] amps_per_count, zero_count and [voltage] volts_per_count,"
              + " zero_count",
          missing);
    } catch (IOException unreadable) {
      throw new SourceException(
          Reason.FAILED,
          file.toString(),
          "the scale file could not be read: " + unreadable.getMessage(),
          "check the file and its permissions",
          unreadable);
    }
  }

  /**
   * Writes a scale file, replacing an old one.
   *
   * @throws SourceException if it cannot be written
   */
  public static void write(Path file, PairScale scale) {
    RecordingSheet.of(scale).write(file);
  }

  /** Both tables of the scale. */
  static String toToml(PairScale scale) {
    return table(CURRENT, AMPS_PER_COUNT, scale.current())
        + "\n"
        + table(VOLTAGE, VOLTS_PER_COUNT, scale.voltage());
  }

  private static String table(String name, String perCount, ChannelScale scale) {
    return "["
        + name
        + "]\n"
        + perCount
        + " = "
        + scale.unitsPerCount()
        + "\n"
        + ZERO_COUNT
        + " = "
        + scale.zeroCount()
        + "\n";
  }

  private void refuseSyntaxErrors() {
    if (toml.hasErrors()) {
      TomlParseError first = toml.errors().get(0);
      throw malformed(first.position(), "", first.getMessage(), "correct the line");
    }
  }

  private PairScale pairScale() {
    refuseUnknownKeys(toml, "", Set.of(CURRENT, VOLTAGE, GAP, SEGMENT));
    return new PairScale(channel(CURRENT, AMPS_PER_COUNT), channel(VOLTAGE, VOLTS_PER_COUNT));
  }

  private long contactPair() {
    return toml.get(SEGMENT) instanceof TomlTable segment
            && segment.get(CONTACT_PAIR) instanceof Long pair
            && pair >= 0
        ? pair
        : RecordingSheet.NOT_SAID;
  }

  private List<PairGap> gaps() {
    Object found = toml.get(GAP);
    if (found == null) {
      return List.of();
    }
    if (!(found instanceof TomlArray array)) {
      throw malformed(toml.inputPositionOf(GAP), GAP, "must be tables", "write [[gap]]");
    }
    List<PairGap> gaps = new ArrayList<>();
    long free = 0;
    for (int k = 0; k < array.size(); k++) {
      PairGap gap = gap(array.get(k), array.inputPositionOf(k));
      if (gap.firstPair() < free || gap.pairs() < 1) {
        throw malformed(
            array.inputPositionOf(k),
            GAP,
            "gaps must come in order and hold at least one pair, this one is " + gap,
            "correct first_pair and pairs");
      }
      free = gap.end();
      gaps.add(gap);
    }
    return gaps;
  }

  private PairGap gap(Object found, TomlPosition position) {
    if (!(found instanceof TomlTable table)
        || !(table.get(FIRST_PAIR) instanceof Long firstPair)
        || !(table.get(PAIRS) instanceof Long pairs)) {
      throw malformed(
          position, GAP, "must have the whole numbers first_pair and pairs", "write both");
    }
    refuseUnknownKeys(table, GAP + ".", Set.of(FIRST_PAIR, PAIRS));
    return new PairGap(firstPair, pairs);
  }

  private ChannelScale channel(String name, String perCountKey) {
    Object found = toml.get(name);
    if (found == null) {
      throw malformed(
          null,
          name,
          "the table is missing",
          "add [" + name + "] with " + perCountKey + ", zero_count");
    }
    if (!(found instanceof TomlTable table)) {
      throw malformed(
          toml.inputPositionOf(name), name, "must be a table, is " + found, "write [" + name + "]");
    }
    refuseUnknownKeys(table, name + ".", Set.of(perCountKey, ZERO_COUNT));
    double unitsPerCount = number(table, name, perCountKey);
    double zeroCount = number(table, name, ZERO_COUNT);
    if (unitsPerCount == 0) {
      throw malformed(
          table.inputPositionOf(perCountKey),
          name + "." + perCountKey,
          "must not be 0",
          "give the sensor's scale");
    }
    return new ChannelScale(unitsPerCount, zeroCount);
  }

  private void refuseUnknownKeys(TomlTable table, String prefix, Set<String> known) {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        throw malformed(
            table.inputPositionOf(key),
            prefix + key,
            "unknown key",
            "remove it, or correct it to one of "
                + String.join(", ", known.stream().sorted().toList()));
      }
    }
  }

  private double number(TomlTable table, String tableName, String key) {
    Object found = table.get(key);
    String fullKey = tableName + "." + key;
    if (found == null) {
      throw malformed(toml.inputPositionOf(tableName), fullKey, "the key is missing", "add it");
    }
    if (!(found instanceof Number number) || !Double.isFinite(number.doubleValue())) {
      throw malformed(
          table.inputPositionOf(key),
          fullKey,
          "must be a finite number, is " + found,
          "write a number without quotes");
    }
    return number.doubleValue();
  }

  private SourceException malformed(
      TomlPosition position, String key, String what, String nextMove) {
    String line = position == null ? "" : ", line " + position.line();
    String atKey = key.isEmpty() ? "" : ", key " + key;
    return new SourceException(Reason.MALFORMED, file + line + atKey, what, nextMove);
  }
}
