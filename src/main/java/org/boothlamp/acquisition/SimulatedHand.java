package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * The hand that holds the length of arc or stick-out and moves along the joint: it wanders, and now
 * and then loses the length for a spell. Confined to one thread.
 */
final class SimulatedHand {

  private static final double WANDER_MEMORY_SECONDS = 1.2;
  private static final double TRAVEL_MEMORY_SECONDS = 3;

  /** Time in which the hand follows its intention. */
  private static final double FOLLOW_SECONDS = 0.15;

  private static final double TRAVEL_SPREAD = 0.15;
  private static final double SHORTEST_LENGTH = 0.3;
  private static final double SECONDS_PER_MINUTE = 60;

  private final double tickSeconds;
  private final SplittableRandom random;
  private final SimulatedWander wander;
  private final SimulatedWander travel;
  private SimulatedTrainee trainee;
  private double spellLeftSeconds;
  private double intended;
  private double length;
  private double travelFactor;

  SimulatedHand(double tickSeconds, SplittableRandom random) {
    this.tickSeconds = tickSeconds;
    this.random = random;
    wander = new SimulatedWander(tickSeconds, WANDER_MEMORY_SECONDS);
    travel = new SimulatedWander(tickSeconds, TRAVEL_MEMORY_SECONDS);
  }

  void begin(SimulatedTrainee newTrainee) {
    trainee = newTrainee;
    spellLeftSeconds = 0;
    intended = trainee.meanLength();
    length = intended;
    travelFactor = 1;
    wander.clear();
    travel.clear();
  }

  /** Goes on by one tick of welding. */
  void tick() {
    double aim = isInSpell() ? trainee.spellLength() : trainee.meanLength();
    intended += (aim - intended) * tickSeconds / FOLLOW_SECONDS;
    double wandered = intended * (1 + trainee.wander() * wander.next(random));
    length = Math.max(SHORTEST_LENGTH, wandered);
    travelFactor = Math.max(SHORTEST_LENGTH, 1 + TRAVEL_SPREAD * travel.next(random));
  }

  private boolean isInSpell() {
    if (spellLeftSeconds > 0) {
      spellLeftSeconds -= tickSeconds;
    } else if (random.nextDouble() < trainee.spellsPerMinute() / SECONDS_PER_MINUTE * tickSeconds) {
      spellLeftSeconds = trainee.spellSeconds() * (0.5 + random.nextDouble());
    }
    return spellLeftSeconds > 0;
  }

  /** Length held now, as a multiple of the right one. */
  double length() {
    return length;
  }

  /** Travel speed now, as a multiple of the process's typical one. */
  double travelFactor() {
    return travelFactor;
  }
}
