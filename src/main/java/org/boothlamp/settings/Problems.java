package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers what is wrong with one file, so that a person hears of all of it at once. */
final class Problems {

  private final Path file;
  private final List<Problem> found = new ArrayList<>();

  Problems(Path file) {
    this.file = file;
  }

  Path file() {
    return file;
  }

  void add(int line, String key, String rule, String nextMove) {
    found.add(new Problem(file, line, key, rule, nextMove));
  }

  void addWholeFile(String rule, String nextMove) {
    add(Problem.WHOLE_FILE, "", rule, nextMove);
  }

  /** Throws all that was found, in line order; does nothing if all is well. */
  void throwIfAny() {
    if (!found.isEmpty()) {
      throw refusal();
    }
  }

  /** The exception to throw, problems in line order. */
  SettingsException refusal() {
    List<Problem> sorted = new ArrayList<>(found);
    sorted.sort(Comparator.comparingInt(Problem::line));
    return new SettingsException(sorted);
  }
}
