package org.boothlamp.acquisition;

/**
 * How somebody welds: how steady the hand is, and how likely and how large each typical mistake.
 * "Length" is the arc length of stick and TIG and the stick-out of wire, as a multiple of the right
 * one. The profiles are invented. Immutable.
 *
 * @param meanLength length held on average, above 0
 * @param wander standard deviation of the length around it, from 0 to 0.5
 * @param spellsPerMinute how often the length is lost for a while, at least 0
 * @param spellLength length during such a spell, above 0
 * @param spellSeconds mean duration of a spell, above 0
 * @param settingChance chance that the machine is set wrong for a run, 0 to 1
 * @param settingError how far it is then set too hot or too cold, as a share of the right setting
 * @param touchChance chance that an attempt to start touches without an arc, 0 to 1
 * @param stuckChance chance that a struck electrode sticks at an attempt, 0 to 1
 * @param arcOutsPerMinute how often the arc is lost, at least 0
 */
public record SimulatedTrainee(
    double meanLength,
    double wander,
    double spellsPerMinute,
    double spellLength,
    double spellSeconds,
    double settingChance,
    double settingError,
    double touchChance,
    double stuckChance,
    double arcOutsPerMinute) {

  private static final SimulatedTrainee BEGINNER =
      new SimulatedTrainee(1.05, 0.14, 5.5, 1.9, 4.5, 0.18, 0.2, 0.4, 0.12, 1.5);
  private static final SimulatedTrainee GOOD =
      new SimulatedTrainee(1.0, 0.07, 0.5, 1.5, 1.0, 0.01, 0.15, 0.08, 0.01, 0.1);

  public SimulatedTrainee {
    require("meanLength", meanLength, Double.MIN_VALUE, 10);
    require("wander", wander, 0, 0.5);
    require("spellsPerMinute", spellsPerMinute, 0, 600);
    require("spellLength", spellLength, Double.MIN_VALUE, 10);
    require("spellSeconds", spellSeconds, Double.MIN_VALUE, 600);
    require("settingChance", settingChance, 0, 1);
    require("settingError", settingError, 0, 0.9);
    require("touchChance", touchChance, 0, 1);
    require("stuckChance", stuckChance, 0, 1);
    require("arcOutsPerMinute", arcOutsPerMinute, 0, 600);
  }

  private static void require(String name, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          "a trainee's " + name + " must be between " + low + " and " + high + ": " + value);
    }
  }

  /** Somebody in the first weeks: inside the window for about half of the time. */
  public static SimulatedTrainee beginner() {
    return BEGINNER;
  }

  /** Somebody ready for the performance test: inside the window nearly all the time. */
  public static SimulatedTrainee good() {
    return GOOD;
  }

  /** A hand that moves on rails at {@code length} and makes no mistakes. */
  public static SimulatedTrainee steady(double length) {
    return new SimulatedTrainee(length, 0, 0, 1, 1, 0, 0, 0, 0, 0);
  }

  /**
   * Somebody between a beginner and a good welder.
   *
   * @param skill from 0, the beginner, to 1, the good one
   */
  public static SimulatedTrainee ofSkill(double skill) {
    require("skill", skill, 0, 1);
    return new SimulatedTrainee(
        between(BEGINNER.meanLength, GOOD.meanLength, skill),
        between(BEGINNER.wander, GOOD.wander, skill),
        between(BEGINNER.spellsPerMinute, GOOD.spellsPerMinute, skill),
        between(BEGINNER.spellLength, GOOD.spellLength, skill),
        between(BEGINNER.spellSeconds, GOOD.spellSeconds, skill),
        between(BEGINNER.settingChance, GOOD.settingChance, skill),
        between(BEGINNER.settingError, GOOD.settingError, skill),
        between(BEGINNER.touchChance, GOOD.touchChance, skill),
        between(BEGINNER.stuckChance, GOOD.stuckChance, skill),
        between(BEGINNER.arcOutsPerMinute, GOOD.arcOutsPerMinute, skill));
  }

  private static double between(double from, double to, double share) {
    return (1 - share) * from + share * to;
  }
}
