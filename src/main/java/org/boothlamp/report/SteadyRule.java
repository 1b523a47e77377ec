package org.boothlamp.report;

/**
 * What a school calls steady enough to try the test: so many runs in a row, each with so much of
 * its judged time in the window. It is the school's rule and its word. Immutable.
 *
 * @param procedureId the procedure it holds for; empty for all
 * @param pass the pass it holds for; empty for all
 * @param runs how many in a row, at least 1
 * @param leastShare of the judged time of each that must be in the window, above 0 to 1
 * @param leastJudgedSeconds shorter runs are passed over, neither for nor against, at least 0
 */
public record SteadyRule(
    String procedureId, String pass, int runs, double leastShare, double leastJudgedSeconds) {

  public SteadyRule {
    if (runs < 1 || !(leastShare > 0 && leastShare <= 1) || !(leastJudgedSeconds >= 0)) {
      throw new IllegalArgumentException(
          "steady rule out of range: runs="
              + runs
              + ", leastShare="
              + leastShare
              + ", leastJudgedSeconds="
              + leastJudgedSeconds);
    }
  }

  /** True if it holds for a pass. */
  boolean isFor(PassKey key) {
    return (procedureId.isEmpty() || procedureId.equals(key.procedureId()))
        && (pass.isEmpty() || pass.equals(key.pass()));
  }

  /** How narrowly it is meant: a rule for one pass goes before one for all. */
  int narrowness() {
    return (procedureId.isEmpty() ? 0 : 2) + (pass.isEmpty() ? 0 : 1);
  }

  /** True if a run is long enough to count, one way or the other. */
  boolean counts(RunRecord run) {
    return run.judgedSeconds() > 0 && run.judgedSeconds() >= leastJudgedSeconds;
  }

  /** True if a run that counts was in the window long enough. */
  boolean isMetBy(RunRecord run) {
    // A millionth: shares are quotients of sums, and the limit itself counts.
    return run.insideShare() >= leastShare - 1e-6;
  }
}
