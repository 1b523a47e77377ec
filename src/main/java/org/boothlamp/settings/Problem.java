package org.boothlamp.settings;

import java.nio.file.Path;

/**
 * One thing that is wrong with a file a person wrote. Immutable.
 *
 * @param file the file, as it was asked for
 * @param line line in it, from 1; {@link #WHOLE_FILE} if no line is to blame
 * @param key the key with its sections, such as {@code lamp.gpio.red}; empty if no key is to blame
 * @param rule the rule that is broken, and the value that breaks it
 * @param nextMove what to do about it
 */
public record Problem(Path file, int line, String key, String rule, String nextMove) {

  /** Stands for the line where the file as a whole is meant. */
  public static final int WHOLE_FILE = 0;

  /** What is wrong and where: {@code file:line: key: rule}. */
  public String what() {
    String where = line == WHOLE_FILE ? file + ": " : file + ":" + line + ": ";
    return where + (key.isEmpty() ? rule : key + ": " + rule);
  }

  /** One line of text: {@code file:line: key: rule; next move}. */
  @Override
  public String toString() {
    return what() + "; " + nextMove;
  }
}
