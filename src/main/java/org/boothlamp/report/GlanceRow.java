package org.boothlamp.report;

import java.util.List;

/**
 * One trainee at a glance. Immutable.
 *
 * @param summary what he welded
 * @param runs his runs in order of time, those whose time of day is not known last
 * @param booths where, in order of the id
 * @param judgedRuns runs of which any time was judged
 * @param oftenest the excursion he had most often; null if none
 * @param operator how much of the shift the arc burned
 * @param change against his last shifts; null if nothing can be compared
 * @param lookAt what most deserves a look
 */
public record GlanceRow(
    TraineeSummary summary,
    List<RunSummary> runs,
    List<String> booths,
    int judgedRuns,
    OftenOutside oftenest,
    OperatorFactor operator,
    ChangeAgainstLastShifts change,
    LookAt lookAt) {

  /** Less than this says nothing yet, s; common practice, no source. */
  private static final double LEAST_JUDGED_SECONDS = 10;

  /** Less than this share outside is no reason to stand beside; common practice, no source. */
  private static final double LEAST_OUTSIDE_SHARE = 0.1;

  public GlanceRow {
    runs = List.copyOf(runs);
    booths = List.copyOf(booths);
  }

  /** Share of the judged time outside the window, 0 to 1; NaN if nothing was judged. */
  public double outsideShare() {
    return 1 - summary.total().insideShare();
  }

  /** True if the figures are reason enough to stand beside him. */
  boolean asksForCompany() {
    return summary.isSignedIn()
        && summary.total().judgedSeconds() >= LEAST_JUDGED_SECONDS
        && outsideShare() >= LEAST_OUTSIDE_SHARE;
  }
}
