package org.boothlamp.acquisition;

/** Learns of the runs of a simulated booth. */
@FunctionalInterface
public interface SimulatedRunListener {

  /** Hears nothing. */
  SimulatedRunListener NONE = (runIndex, run) -> {};

  /**
   * Called inside a read, on the sampler's thread, when all pairs of the runs before were handed
   * over and none of this run: its pause of at least {@value SimulatedRun#SHORTEST_PAUSE_SECONDS} s
   * comes first.
   *
   * @param runIndex counts from 0; an endless booth goes on counting when its script begins again
   * @param run the run
   */
  void onRunStarts(int runIndex, SimulatedRun run);
}
