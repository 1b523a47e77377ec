package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * What the trainee does during a run: waits, tries to start, holds the arc, loses it, ends. The
 * arcs ask for {@link #phase} and turn it into movements and triggers of their own process.
 *
 * <pre>
 * PAUSE -> TOUCHING -> AWAY -+        a touch, or a stuck electrode
 *   |         ^              |
 *   +---------+--------------+-> HOLDING -> ENDING -> TAIL -> DONE
 *                    ^                |
 *                    +----- AWAY -----+   the arc is lost
 * </pre>
 *
 * Confined to one thread.
 */
final class SimulatedWelder {

  /** What the trainee is up to. */
  enum Phase {
    /** Nothing; the electrode is away from the work. */
    PAUSE,
    /** Tries to start, and will fail. */
    TOUCHING,
    /** Takes the electrode away, to try again. */
    AWAY,
    /** Starts the arc and holds it. */
    HOLDING,
    /** Ends the run in order. */
    ENDING,
    /** Rests long enough for the arc to count as off. */
    TAIL,
    /** The run is over. */
    DONE
  }

  private static final double SECONDS_PER_MINUTE = 60;
  private static final double TAIL_SECONDS = 0.6;
  private static final int MOST_FAILED_ATTEMPTS = 4;
  private static final double OUT_SECONDS = 0.02;
  private static final double STRIKE_PATIENCE_SECONDS = 0.15;
  private static final double WIRE_PATIENCE_SECONDS = 1;
  private static final double QUICK_RESTART_CHANCE = 0.5;

  private final double tickSeconds;
  private final SplittableRandom random;
  private final SimulatedHand hand;
  private SimulatedRun run;
  private Phase phase = Phase.DONE;
  private double leftSeconds;
  private double arcLeftSeconds;
  private double withoutCurrentSeconds;
  private double settingFactor = 1;
  private int failedAttempts;
  private boolean restartsAtOnce;
  private double travelMm;

  SimulatedWelder(double tickSeconds, SplittableRandom random) {
    this.tickSeconds = tickSeconds;
    this.random = random;
    hand = new SimulatedHand(tickSeconds, random);
  }

  void begin(SimulatedRun newRun) {
    run = newRun;
    hand.begin(run.trainee());
    settingFactor = drawSetting(run.trainee());
    arcLeftSeconds = run.arcSeconds();
    failedAttempts = 0;
    travelMm = 0;
    enter(Phase.PAUSE, run.pauseSeconds());
  }

  private double drawSetting(SimulatedTrainee trainee) {
    if (random.nextDouble() >= trainee.settingChance()) {
      return 1;
    }
    return random.nextBoolean() ? 1 + trainee.settingError() : 1 - trainee.settingError();
  }

  private void enter(Phase next, double seconds) {
    phase = next;
    leftSeconds = seconds;
    withoutCurrentSeconds = 0;
  }

  /**
   * Goes on by one tick.
   *
   * @param conducts true if current flows
   */
  void tick(boolean conducts) {
    leftSeconds -= tickSeconds;
    withoutCurrentSeconds = conducts ? 0 : withoutCurrentSeconds + tickSeconds;
    switch (phase) {
      case PAUSE -> attemptWhenDue();
      case TOUCHING -> withdrawWhenDue();
      case AWAY -> returnWhenDue();
      case HOLDING -> hold(conducts);
      case ENDING -> restWhenOut();
      case TAIL -> endWhenDue();
      case DONE -> {}
    }
  }

  private void attemptWhenDue() {
    if (leftSeconds <= 0) {
      attempt();
    }
  }

  private void attempt() {
    double draw = random.nextDouble();
    SimulatedTrainee trainee = run.trainee();
    double stuckChance = run.process().isStruck() ? trainee.stuckChance() : 0;
    if (failedAttempts == MOST_FAILED_ATTEMPTS || draw >= stuckChance + trainee.touchChance()) {
      failedAttempts = 0;
      enter(Phase.HOLDING, 0);
    } else {
      failedAttempts++;
      enter(Phase.TOUCHING, draw < stuckChance ? between(0.7, 1.7) : between(0.08, 0.18));
    }
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private void withdrawWhenDue() {
    if (leftSeconds <= 0) {
      restartsAtOnce = false;
      enter(Phase.AWAY, between(0.5, 1.1));
    }
  }

  private void returnWhenDue() {
    if (leftSeconds > 0) {
      return;
    }
    if (restartsAtOnce) {
      enter(Phase.HOLDING, 0);
    } else {
      attempt();
    }
  }

  private void hold(boolean conducts) {
    hand.tick();
    if (conducts) {
      arcLeftSeconds -= tickSeconds;
      travelMm += run.process().typicalTravelMmPerS() * hand.travelFactor() * tickSeconds;
    }
    if (arcLeftSeconds <= 0) {
      enter(Phase.ENDING, 0);
    } else if (conducts ? slips() : withoutCurrentSeconds > patienceSeconds()) {
      loseArc();
    }
  }

  private boolean slips() {
    double perSecond = run.trainee().arcOutsPerMinute() / SECONDS_PER_MINUTE;
    return random.nextDouble() < perSecond * tickSeconds;
  }

  private double patienceSeconds() {
    return run.process().feedsWire() ? WIRE_PATIENCE_SECONDS : STRIKE_PATIENCE_SECONDS;
  }

  private void loseArc() {
    restartsAtOnce = random.nextDouble() < QUICK_RESTART_CHANCE;
    enter(Phase.AWAY, restartsAtOnce ? between(0.1, 0.17) : between(0.7, 1.6));
  }

  private void restWhenOut() {
    if (withoutCurrentSeconds > OUT_SECONDS) {
      enter(Phase.TAIL, TAIL_SECONDS);
    }
  }

  private void endWhenDue() {
    if (leftSeconds <= 0) {
      enter(Phase.DONE, 0);
    }
  }

  Phase phase() {
    return phase;
  }

  /** Length of arc or stick-out, as a multiple of the right one. */
  double length() {
    return hand.length();
  }

  /** Setting of the machine that the trainee made of the one asked for, amps. */
  double setAmps() {
    return run.setAmps() * settingFactor;
  }

  /** Way travelled along the joint with current flowing, mm; only the length of this run. */
  double travelMm() {
    return travelMm;
  }
}
