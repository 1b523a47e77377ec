package org.boothlamp.settings;

import java.util.Map;

/**
 * Whose badge is whose. Immutable.
 *
 * @param trainees trainee code by the badge's code; an empty one signs out
 */
public record BadgeTable(Map<String, String> trainees) {

  public BadgeTable {
    trainees = Map.copyOf(trainees);
  }

  /** The trainee of a badge; empty for a badge that signs out; null if the badge is not known. */
  public String traineeOf(String badge) {
    return trainees.get(badge);
  }
}
