package org.boothlamp.settings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One section of a TOML file while it is read: each value is asked for once, with its rule.
 *
 * <p>What breaks its rule is noted as a problem and answered with a stand-in that keeps the rule,
 * so that reading goes on and finds the other problems; the file is refused at the end. Keys that
 * were never asked for are unknown. Confined to one thread.
 */
final class Section {

  private static final TomlTable NOTHING = Toml.parse("");

  private final Problems problems;
  private final String path;
  private final TomlTable table;
  private final int line;
  private final Set<String> asked = new LinkedHashSet<>();
  private final Set<String> unsound = new HashSet<>();
  private final List<Section> inner = new ArrayList<>();
  private boolean quiet;

  private Section(Problems problems, String path, TomlTable table, int line) {
    this.problems = problems;
    this.path = path;
    this.table = table;
    this.line = line;
  }

  static Section ofDocument(Problems problems, TomlTable document) {
    return new Section(problems, "", document, 1);
  }

  /** True if the file has the key. */
  boolean has(String key) {
    return value(key) != null;
  }

  /** True if no problem was noted with this key. */
  boolean isSound(String key) {
    return !quiet && !unsound.contains(key);
  }

  /** The raw value, or null if the file does not have the key. */
  Object value(String key) {
    asked.add(key);
    return table.get(List.of(key));
  }

  /** Line of a key, or of the section if the key is missing. */
  int lineOf(String key) {
    TomlPosition position = table.inputPositionOf(List.of(key));
    return position == null ? line : position.line();
  }

  /** The key with its sections. */
  String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  double number(String key, Range range, double byDefault) {
    Object value = value(key);
    return value == null ? byDefault : checkedNumber(key, value, range, byDefault);
  }

  /** A number that has no default: NaN if the key is missing. */
  double optionalNumber(String key, Range range, double example) {
    Object value = value(key);
    return value == null ? Double.NaN : checkedNumber(key, value, range, example);
  }

  double requiredNumber(String key, Range range, double example) {
    Object value = value(key);
    if (value == null) {
      refuseMissing(key, example);
      return example;
    }
    return checkedNumber(key, value, range, example);
  }

  private double checkedNumber(String key, Object value, Range range, double example) {
    if (value instanceof Number number && range.holds(number.doubleValue())) {
      return number.doubleValue();
    }
    refuse(key, "must be a number " + range.words(), value, example);
    return example;
  }

  long whole(String key, Range range, long byDefault) {
    Object value = value(key);
    return value == null ? byDefault : checkedWhole(key, value, range, byDefault);
  }

  long requiredWhole(String key, Range range, long example) {
    Object value = value(key);
    if (value == null) {
      refuseMissing(key, example);
      return example;
    }
    return checkedWhole(key, value, range, example);
  }

  private long checkedWhole(String key, Object value, Range range, long example) {
    if (value instanceof Long number && range.holds(number)) {
      return number;
    }
    refuse(key, "must be a whole number " + range.words(), value, example);
    return example;
  }

  boolean flag(String key, boolean byDefault) {
    Object value = value(key);
    if (value == null || value instanceof Boolean) {
      return value == null ? byDefault : (Boolean) value;
    }
    refuse(key, "must be true or false", value, byDefault);
    return byDefault;
  }

  /**
   * A text that may be left out.
   *
   * @param byDefault answer if the key is missing, may be null
   * @param example a good text, for the message
   */
  String text(String key, TextRule rule, String byDefault, String example) {
    Object value = value(key);
    return value == null ? byDefault : checkedText(key, value, rule, example);
  }

  String requiredText(String key, TextRule rule, String example) {
    Object value = value(key);
    if (value == null) {
      refuseMissing(key, example);
      return example;
    }
    return checkedText(key, value, rule, example);
  }

  private String checkedText(String key, Object value, TextRule rule, String example) {
    if (value instanceof String text && rule.allows(text)) {
      return text;
    }
    refuse(key, "must be a text in quotes, " + rule.words(), value, example);
    return example;
  }

  /** A list of different texts; empty if the key is missing. */
  List<String> texts(String key, TextRule rule, String example) {
    Object value = value(key);
    Set<String> texts = new LinkedHashSet<>();
    if (value != null && !(value instanceof TomlArray list && addTexts(list, rule, texts))) {
      refuse(
          key,
          "must be a list of different texts in quotes, each "
              + rule.words()
              + ", but is "
              + Literal.of(value),
          "write e.g. " + key + " = [" + Literal.of(example) + "]");
    }
    return List.copyOf(texts);
  }

  private static boolean addTexts(TomlArray list, TextRule rule, Set<String> into) {
    return list.toList().stream()
        .allMatch(each -> each instanceof String text && rule.allows(text) && into.add(text));
  }

  /** One of a few words, or {@code byDefault} if the key is missing. */
  <T> T word(String key, Map<String, T> words, T byDefault) {
    Object value = value(key);
    return value == null ? byDefault : checkedWord(key, value, words);
  }

  <T> T requiredWord(String key, Map<String, T> words) {
    Object value = value(key);
    if (value == null) {
      refuseMissing(key, firstOf(words));
      return words.get(firstOf(words));
    }
    return checkedWord(key, value, words);
  }

  private <T> T checkedWord(String key, Object value, Map<String, T> words) {
    T meaning = value instanceof String word ? words.get(word) : null;
    if (meaning != null) {
      return meaning;
    }
    String hint = value instanceof String word ? Nearest.hint(word, words.keySet()) : "";
    String example = "write e.g. " + key + " = " + Literal.of(firstOf(words));
    refuse(key, wordsRule(words) + Literal.of(value), hint.isEmpty() ? example : hint);
    return words.get(firstOf(words));
  }

  /** A list of different words, not empty, or {@code byDefault} if the key is missing. */
  <T> Set<T> words(String key, Map<String, T> words, Set<T> byDefault) {
    Object value = value(key);
    if (value == null) {
      return byDefault;
    }
    Set<T> meanings = new LinkedHashSet<>();
    if (!(value instanceof TomlArray list) || !addWords(list, words, meanings)) {
      String example = key + " = [" + Literal.of(firstOf(words)) + "]";
      String rule = "must be a list of one or more different words out of " + listOf(words);
      refuse(key, rule + ", but is " + Literal.of(value), "write e.g. " + example);
      return byDefault;
    }
    return meanings;
  }

  private static <T> boolean addWords(TomlArray list, Map<String, T> words, Set<T> into) {
    for (int i = 0; i < list.size(); i++) {
      T meaning = list.get(i) instanceof String word ? words.get(word) : null;
      if (meaning == null || !into.add(meaning)) {
        return false;
      }
    }
    return !into.isEmpty();
  }

  private static String wordsRule(Map<String, ?> words) {
    return "must be " + (words.size() > 1 ? "one of " : "") + listOf(words) + ", but is ";
  }

  private static String listOf(Map<String, ?> words) {
    return words.keySet().stream().map(Literal::of).collect(Collectors.joining(", "));
  }

  private static String firstOf(Map<String, ?> words) {
    return words.keySet().iterator().next();
  }

  /** An inner section; an empty one if the file does not have it. */
  Section section(String key) {
    Object value = value(key);
    if (value == null || value instanceof TomlTable) {
      return enter(pathOf(key), value == null ? NOTHING : (TomlTable) value, lineOf(key));
    }
    refuse(
        key,
        "must be a section, but is " + Literal.of(value),
        "write [" + pathOf(key) + "] on a line of its own and its settings below");
    Section none = enter(pathOf(key), NOTHING, lineOf(key));
    none.quiet = true;
    return none;
  }

  /** The sections of a repeated one, {@code [[key]]}, in file order; none if it is missing. */
  List<Section> sections(String key) {
    Object value = value(key);
    List<Section> sections = new ArrayList<>();
    if (value instanceof TomlArray list && isAllTables(list)) {
      for (int i = 0; i < list.size(); i++) {
        sections.add(enter(nameOf(key, list.getTable(i), i), list.getTable(i), lineIn(list, i)));
      }
    } else if (value != null) {
      refuse(
          key,
          "must be repeated sections, but is " + Literal.of(value),
          "write [[" + pathOf(key) + "]] on a line of its own and its settings below");
    }
    return sections;
  }

  private static boolean isAllTables(TomlArray list) {
    return list.toList().stream().allMatch(TomlTable.class::isInstance);
  }

  private static int lineIn(TomlArray list, int index) {
    return list.inputPositionOf(index).line();
  }

  /** People look for the name they gave, {@code pass[fill]}; without one the count has to do. */
  private String nameOf(String key, TomlTable item, int index) {
    Object name = item.get(List.of("name"));
    boolean named = name instanceof String text && TextRule.NAME.allows(text);
    return pathOf(key) + "[" + (named ? name : index + 1) + "]";
  }

  private Section enter(String innerPath, TomlTable innerTable, int innerLine) {
    Section section = new Section(problems, innerPath, innerTable, innerLine);
    inner.add(section);
    return section;
  }

  /** Notes a problem with a key: rule and value, then the next move. */
  void refuse(String key, String rule, String nextMove) {
    unsound.add(key);
    problems.add(lineOf(key), pathOf(key), rule, nextMove);
  }

  /** Notes a value that breaks its rule, with a good value as the next move. */
  void refuse(String key, String rule, Object value, Object example) {
    refuse(
        key,
        rule + ", but is " + Literal.of(value),
        "write e.g. " + key + " = " + Literal.of(example));
  }

  void refuseMissing(String key, Object example) {
    if (quiet) {
      return;
    }
    String place = table == NOTHING ? " in a section [" + path + "]" : "";
    refuse(key, "is missing", "write e.g. " + key + " = " + Literal.of(example) + place);
  }

  /** Notes a key that has no meaning beside other settings; does nothing if it is not there. */
  void refuseIfGiven(String key, String rule) {
    if (table.get(List.of(key)) != null) {
      asked.add(key);
      refuse(key, rule, "remove it, or put # before it");
    }
  }

  /** Lets all other keys of this section pass, as nobody can say which ones belong. */
  void passOver() {
    asked.addAll(table.keySet());
  }

  /** Notes every key that was never asked for, here and in the inner sections. */
  void refuseUnknown() {
    for (String key : table.keySet()) {
      if (!asked.contains(key)) {
        refuseUnknown(key);
      }
    }
    inner.forEach(Section::refuseUnknown);
  }

  private void refuseUnknown(String key) {
    String hint = Nearest.hint(key, asked);
    String known = "known here: " + String.join(", ", asked);
    problems.add(
        lineOf(key),
        pathOf(key),
        "is not known",
        (hint.isEmpty() ? "remove it" : hint) + " (" + known + ")");
  }
}
