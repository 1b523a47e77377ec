package org.boothlamp.acquisition;

import java.time.Instant;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * What was welded while a recording was made; the booth log holds the rest. Immutable.
 *
 * @param booth booth id
 * @param startWallMillis time of day of the segment's start, ms since the epoch
 * @param trainee trainee code, or empty
 * @param procedureId procedure, or empty
 * @param pass its pass, or empty
 * @param contactPair place in the recording of the segment's first pair
 */
record RecordedSegment(
    String booth,
    long startWallMillis,
    String trainee,
    String procedureId,
    String pass,
    long contactPair) {

  /** As a TOML table. */
  String toToml() {
    return "\n[segment]\nbooth = "
        + quoted(booth)
        + "\nstart = "
        + quoted(Instant.ofEpochMilli(startWallMillis).toString())
        + "\ntrainee = "
        + quoted(trainee)
        + "\nprocedure = "
        + quoted(procedureId)
        + "\npass = "
        + quoted(pass)
        + "\n"
        + RecordingScale.CONTACT_PAIR
        + " = "
        + contactPair
        + "\n";
  }

  private static String quoted(String text) {
    return text.codePoints()
        .mapToObj(RecordedSegment::escaped)
        .collect(Collectors.joining("", "\"", "\""));
  }

  private static String escaped(int character) {
    if (character == '"' || character == '\\') {
      return "\\" + (char) character;
    }
    return Character.isISOControl(character)
        ? String.format(Locale.ROOT, "\\u%04x", character)
        : Character.toString(character);
  }
}
