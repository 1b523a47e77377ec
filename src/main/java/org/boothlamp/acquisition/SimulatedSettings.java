package org.boothlamp.acquisition;

import java.util.List;
import org.boothlamp.monitor.SourceFormat;

/**
 * What {@code booth.toml} may say of a simulated booth: endless runs of one trainee, to try the
 * monitor without hardware. Immutable.
 *
 * @param process "stick", "short-arc", "tig" or "tig-ac"
 * @param pairsPerSecond output rate, {@value SourceFormat#LEAST_PAIRS_PER_SECOND} to {@value
 *     SimulatedSensor#MOST_PAIRS_PER_SECOND}
 * @param seed of everything that happens by chance
 * @param speed 1 in real time, n for n times that, 0 as fast as possible
 * @param skill of the trainee, from 0, a beginner, to 1, a good welder
 * @param pauseSeconds pause before each run, at least {@value SimulatedRun#SHORTEST_PAUSE_SECONDS}
 *     s
 * @param arcSeconds arc time of each run, at least {@value SimulatedRun#SHORTEST_ARC_SECONDS} s
 */
public record SimulatedSettings(
    String process,
    int pairsPerSecond,
    long seed,
    double speed,
    double skill,
    double pauseSeconds,
    double arcSeconds) {

  /** Stick welding in real time by somebody half-way through the course. */
  public static final SimulatedSettings TYPICAL =
      new SimulatedSettings("stick", SimulatedSensor.TYPICAL_PAIRS_PER_SECOND, 1, 1, 0.5, 10, 30);

  public SimulatedSettings {
    if (SimulatedProcess.ofWord(process) == null) {
      throw new IllegalArgumentException(
          "the simulated booth welds stick, short-arc, tig or tig-ac: process=\"" + process + "\"");
    }
    if (!(speed >= 0 && speed <= SimulatedPacer.FASTEST_SPEED)) {
      throw new IllegalArgumentException(
          "speed must be 1 for real time, n for n times that up to "
              + SimulatedPacer.FASTEST_SPEED
              + ", or 0 for as fast as possible: speed="
              + speed);
    }
    SimulatedSensor.requireRate(pairsPerSecond);
    run(process, skill, pauseSeconds, arcSeconds);
  }

  /** Checks what is left to check on the way. */
  private static SimulatedRun run(
      String process, double skill, double pauseSeconds, double arcSeconds) {
    return SimulatedRun.of(
        pauseSeconds,
        SimulatedProcess.ofWord(process),
        SimulatedTrainee.ofSkill(skill),
        arcSeconds);
  }

  SimulatedBooth booth() {
    SimulatedRun run = run(process, skill, pauseSeconds, arcSeconds);
    return SimulatedBooth.of(List.of(run), seed).repeatedForever();
  }
}
