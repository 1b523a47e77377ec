package org.boothlamp.boothlog;

/**
 * How long rows are kept, days by kind; 0 for ever. The day that runs does not count. Calibrations,
 * starts of the monitor and requests to forget are always kept: what stays rests on them.
 * Immutable.
 *
 * @param tracesDays amps and volts of runs, 20 times a second
 * @param runsDays runs with all that belongs to them, and touches
 * @param eventsDays starts, faults and what else happened
 * @param signInsDays who signed in
 */
public record RetentionRule(int tracesDays, int runsDays, int eventsDays, int signInsDays) {

  /** Everything is kept for ever. */
  public static final RetentionRule FOR_EVER = new RetentionRule(0, 0, 0, 0);
}
