package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What {@code check} says of a source, and the numbers in it. */
final class CheckedText {

  private final String text;

  CheckedText(JsonNode finding) {
    text = finding.path("detail").asText();
  }

  /** The number that a pattern's group matches. */
  double number(String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertTrue(matcher.find(), text);
    return Double.parseDouble(matcher.group(1));
  }

  void contains(String words) {
    assertTrue(text.contains(words), text);
  }
}
