package org.boothlamp.settings;

import java.util.Collection;

/** Guesses which word a misspelt one was meant to be. */
final class Nearest {

  /** Beyond this a guess is more puzzling than none. */
  private static final int MOST_EDITS = 3;

  private Nearest() {}

  /** A hint such as {@code did you mean baud?}, or an empty text if no word is near. */
  static String hint(String written, Collection<String> words) {
    String nearest = null;
    int least = Math.min(MOST_EDITS, written.length() / 2);
    for (String word : words) {
      int edits = edits(written, word);
      if (edits <= least && (nearest == null || edits < least)) {
        nearest = word;
        least = edits;
      }
    }
    return nearest == null ? "" : "did you mean " + nearest + "?";
  }

  /** Letters to insert, delete or replace to turn one word into the other (Levenshtein 1966). */
  static int edits(String from, String to) {
    int[] row = new int[to.length() + 1];
    for (int j = 0; j <= to.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      nextRow(row, from.charAt(i - 1), to, i);
    }
    return row[to.length()];
  }

  private static void nextRow(int[] row, char letter, String to, int index) {
    int diagonal = row[0];
    row[0] = index;
    for (int j = 1; j <= to.length(); j++) {
      int replaced = diagonal + (letter == to.charAt(j - 1) ? 0 : 1);
      diagonal = row[j];
      row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
    }
  }
}
