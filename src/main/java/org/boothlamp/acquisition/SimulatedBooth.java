package org.boothlamp.acquisition;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The script of a simulated booth: runs, one after the other. The same script and seed give the
 * same pairs. Immutable.
 *
 * @param runs at least one
 * @param seed of everything that happens by chance
 * @param endless true if the script begins again at its end, with other chances each time
 */
public record SimulatedBooth(List<SimulatedRun> runs, long seed, boolean endless) {

  /** Pause before each run of the ready-made scripts, s. */
  public static final double TYPICAL_PAUSE_SECONDS = 4;

  public SimulatedBooth {
    runs = List.copyOf(runs);
    if (runs.isEmpty()) {
      throw new IllegalArgumentException("a simulated booth needs at least one run: runs=[]");
    }
  }

  /** A script that is played once. */
  public static SimulatedBooth of(List<SimulatedRun> runs, long seed) {
    return new SimulatedBooth(runs, seed, false);
  }

  /** Some runs of stick welding. */
  public static SimulatedBooth stick(
      SimulatedTrainee trainee, int runs, double arcSeconds, long seed) {
    return repeated(SimulatedProcess.STICK, trainee, runs, arcSeconds, seed);
  }

  /** Some runs of short-circuit transfer. */
  public static SimulatedBooth shortArc(
      SimulatedTrainee trainee, int runs, double arcSeconds, long seed) {
    return repeated(SimulatedProcess.SHORT_ARC, trainee, runs, arcSeconds, seed);
  }

  /** Some runs of TIG on direct current, electrode negative. */
  public static SimulatedBooth tig(
      SimulatedTrainee trainee, int runs, double arcSeconds, long seed) {
    return repeated(SimulatedProcess.TIG, trainee, runs, arcSeconds, seed);
  }

  /** Some equal runs of one trainee. */
  public static SimulatedBooth repeated(
      SimulatedProcess process, SimulatedTrainee trainee, int runs, double arcSeconds, long seed) {
    SimulatedRun run = SimulatedRun.of(TYPICAL_PAUSE_SECONDS, process, trainee, arcSeconds);
    return of(Collections.nCopies(runs, run), seed);
  }

  /** This script and then another, with this one's seed. */
  public SimulatedBooth then(SimulatedBooth next) {
    List<SimulatedRun> both = new ArrayList<>(runs);
    both.addAll(next.runs);
    return new SimulatedBooth(both, seed, endless);
  }

  /** The same script, played again and again. */
  public SimulatedBooth repeatedForever() {
    return new SimulatedBooth(runs, seed, true);
  }
}
