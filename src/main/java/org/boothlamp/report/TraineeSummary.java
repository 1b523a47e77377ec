package org.boothlamp.report;

import java.util.List;

/**
 * What one trainee did in the shift. Immutable.
 *
 * @param trainee trainee code; empty for all that happened while nobody was signed in
 * @param passes one row for each pass welded, in order of the first run
 * @param total all runs; without mean amps and volts if there is more than one pass
 * @param touches contacts that did not become segments, stuck electrodes included
 * @param stuck how many of them were stuck electrodes
 */
public record TraineeSummary(
    String trainee, List<PassSummary> passes, Figures total, int touches, int stuck) {

  public TraineeSummary {
    passes = List.copyOf(passes);
  }

  /** True for a code; false for what happened while nobody was signed in. */
  public boolean isSignedIn() {
    return !trainee.isEmpty();
  }
}
