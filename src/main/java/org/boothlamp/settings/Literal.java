package org.boothlamp.settings;

import java.math.BigDecimal;
import java.util.StringJoiner;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Shows values in messages the way a person would write them in the file. */
final class Literal {

  private static final int LONGEST_TEXT = 60;

  private Literal() {}

  static String of(Object value) {
    if (value instanceof String text) {
      return quoted(text);
    }
    if (value instanceof Double number) {
      return ofNumber(number);
    }
    if (value instanceof TomlArray array) {
      return shortened(ofArray(array));
    }
    if (value instanceof TomlTable) {
      return "a section";
    }
    return String.valueOf(value);
  }

  /** Without exponent and without zeros that say nothing: 1000000, 0.05. */
  static String ofNumber(double number) {
    if (!Double.isFinite(number)) {
      return String.valueOf(number);
    }
    return number == 0 ? "0" : BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  private static String quoted(String text) {
    return "\"" + shortened(printable(text)) + "\"";
  }

  /** A control character in a message could move the cursor or hide what follows. */
  private static String printable(String text) {
    return text.replace("\"", "\\\"").replaceAll("\\p{Cntrl}", "\uFFFD");
  }

  private static String ofArray(TomlArray array) {
    StringJoiner items = new StringJoiner(", ", "[", "]");
    for (int i = 0; i < array.size(); i++) {
      items.add(of(array.get(i)));
    }
    return items.toString();
  }

  static String shortened(String text) {
    return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT) + "...";
  }
}
