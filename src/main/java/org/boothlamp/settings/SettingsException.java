package org.boothlamp.settings;

import java.util.List;
import java.util.stream.Collectors;

/** A settings or procedure file that is refused, with everything that is wrong with it. */
public final class SettingsException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /**
   * A refusal.
   *
   * @param problems at least one, in the order in which a person should read them
   */
  public SettingsException(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** All problems; the message holds them too, one a line. */
  public List<Problem> problems() {
    return problems;
  }
}
