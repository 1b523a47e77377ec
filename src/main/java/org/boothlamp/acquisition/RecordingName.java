package org.boothlamp.acquisition;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The name of a segment's raw recording: {@code
 * segment-20260302T070312450Z-1f0c9ad2-8812450031.wav} began at this moment of UTC, as the clock
 * stood then, and at this time of the monotonic clock, in ns, since the machine was switched on,
 * which the kernel knows by a number of this beginning. The last two stand in the booth log as
 * well, so that neither has to be told of the other; the time of day may be put right later and is
 * there for people. Immutable.
 *
 * @param startWallMillis time of day of the segment's start, ms since the epoch
 * @param machine which time the machine was switched on: {@link #machine}
 * @param startMonotonicNanos the segment's start on the monotonic clock
 */
public record RecordingName(long startWallMillis, String machine, long startMonotonicNanos) {

  /** Ending of a whole recording. */
  static final String WAV = ".wav";

  /** Ending of one that is being written, or was when the power went. */
  static final String PART = ".wav.part";

  /** Ending of the file with the scale. */
  static final String SHEET = ".toml";

  private static final String NO_MACHINE = "0";

  private static final int MACHINE_DIGITS = 8;

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmssSSS'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final Pattern NAME =
      Pattern.compile("segment-([0-9]{8}T[0-9]{9}Z)-([0-9a-f]{1,8})-([0-9]{1,18})[.].*");

  /** The first digits of the kernel's boot id, or 0 where the kernel does not tell. */
  static String machine(String machineBoot) {
    if (machineBoot == null || machineBoot.length() < MACHINE_DIGITS) {
      return NO_MACHINE;
    }
    return machineBoot.substring(0, MACHINE_DIGITS);
  }

  /** The name without an ending. */
  String stem() {
    return "segment-"
        + TIME.format(Instant.ofEpochMilli(startWallMillis))
        + "-"
        + machine
        + "-"
        + startMonotonicNanos;
  }

  /** The name of the WAV file. */
  public String wav() {
    return stem() + WAV;
  }

  /** What a file name says; null if it is not of a segment's recording. */
  static RecordingName of(String fileName) {
    Matcher matcher = NAME.matcher(fileName);
    if (!matcher.matches()) {
      return null;
    }
    try {
      Instant start = TIME.parse(matcher.group(1), Instant::from);
      return new RecordingName(
          start.toEpochMilli(), matcher.group(2), Long.parseLong(matcher.group(3)));
    } catch (DateTimeParseException noTime) {
      return null;
    }
  }
}
