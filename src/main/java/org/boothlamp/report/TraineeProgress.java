package org.boothlamp.report;

import java.util.List;

/**
 * A trainee's way to the performance test. Immutable.
 *
 * @param trainee trainee code
 * @param arcSeconds arc-on time of all runs
 * @param runs how many
 * @param passes one for each pass welded, in order of the first run
 */
public record TraineeProgress(
    String trainee, double arcSeconds, int runs, List<PassProgress> passes) {

  public TraineeProgress {
    passes = List.copyOf(passes);
  }
}
