package org.boothlamp.acquisition;

/**
 * One run in the script of a simulated booth. Immutable.
 *
 * @param pauseSeconds time without current before the first attempt to start, at least 1 s so that
 *     whoever hears of the run can sign the trainee in first
 * @param process what is welded
 * @param setAmps setting of the machine that the run asks for, 20 to 300 A; the trainee may miss it
 * @param trainee who welds
 * @param arcSeconds arc time after which the trainee ends the run, at least 0.1 s
 */
public record SimulatedRun(
    double pauseSeconds,
    SimulatedProcess process,
    double setAmps,
    SimulatedTrainee trainee,
    double arcSeconds) {

  /** Shortest pause before a run, s. */
  public static final double SHORTEST_PAUSE_SECONDS = 1;

  /** Shortest arc time of a run, s. */
  public static final double SHORTEST_ARC_SECONDS = 0.1;

  private static final double LONGEST_SECONDS = 86_400;

  public SimulatedRun {
    require("pauseSeconds", pauseSeconds, SHORTEST_PAUSE_SECONDS, LONGEST_SECONDS);
    require("setAmps", setAmps, 20, 300);
    require("arcSeconds", arcSeconds, SHORTEST_ARC_SECONDS, LONGEST_SECONDS);
  }

  private static void require(String name, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          "a run's " + name + " must be between " + low + " and " + high + ": " + value);
    }
  }

  /** A run at the typical setting of its process. */
  public static SimulatedRun of(
      double pauseSeconds, SimulatedProcess process, SimulatedTrainee trainee, double arcSeconds) {
    return new SimulatedRun(pauseSeconds, process, process.typicalAmps(), trainee, arcSeconds);
  }
}
