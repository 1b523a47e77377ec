package org.boothlamp.boothlog;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Polarity;

/** The stored words, back to what they stand for. */
final class StoredWords {

  private static final Map<String, Quantity> QUANTITIES = byWord(Quantity.values(), Quantity::key);
  private static final Map<String, Side> SIDES = byWord(Side.values(), Side::word);
  private static final Map<String, Polarity> POLARITIES = byWord(Polarity.values(), Polarity::word);

  private StoredWords() {}

  private static <T> Map<String, T> byWord(T[] values, Function<T, String> wordOf) {
    Map<String, T> byWord = new HashMap<>();
    for (T value : values) {
      byWord.put(wordOf.apply(value), value);
    }
    return byWord;
  }

  static Quantity quantity(String word) {
    return known(QUANTITIES, word);
  }

  static Side side(String word) {
    return known(SIDES, word);
  }

  static Polarity polarity(String word) {
    return known(POLARITIES, word);
  }

  private static <T> T known(Map<String, T> byWord, String word) {
    T value = byWord.get(word);
    if (value == null) {
      throw new IllegalArgumentException(
          "a stored word must be one of " + byWord.keySet() + ": word=" + word);
    }
    return value;
  }
}
