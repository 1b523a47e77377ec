package org.boothlamp.acquisition;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The name of a segment's raw recording: {@code segment-12-20260302T070312450Z.wav} is that of the
 * twelfth start of the monitor and of this moment of UTC. Both stand in the segment's row of the
 * booth log, so that neither has to be told of the other. Immutable.
 *
 * @param boot number of the monitor's start
 * @param startWallMillis time of day of the segment's start, ms since the epoch
 */
public record RecordingName(long boot, long startWallMillis) {

  /** Ending of a whole recording. */
  static final String WAV = ".wav";

  /** Ending of one that is being written, or was when the power went. */
  static final String PART = ".wav.part";

  /** Ending of the file with the scale. */
  static final String SHEET = ".toml";

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmssSSS'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final Pattern NAME =
      Pattern.compile("segment-([0-9]{1,18})-([0-9]{8}T[0-9]{9}Z)[.].*");

  /** The name without an ending. */
  String stem() {
    return "segment-" + boot + "-" + TIME.format(Instant.ofEpochMilli(startWallMillis));
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
      Instant start = TIME.parse(matcher.group(2), Instant::from);
      return new RecordingName(Long.parseLong(matcher.group(1)), start.toEpochMilli());
    } catch (DateTimeParseException noTime) {
      return null;
    }
  }
}
