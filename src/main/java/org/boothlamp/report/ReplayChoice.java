package org.boothlamp.report;

/**
 * A run that another one can be laid beside: welded to the same pass. Immutable.
 *
 * @param id row number in the log
 * @param trainee trainee code; empty if nobody had signed in
 * @param startWallMillis time of day at the start, ms since the epoch
 * @param lengthSeconds length
 * @param reference true for one that an instructor marked as a reference weld
 */
public record ReplayChoice(
    long id, String trainee, long startWallMillis, double lengthSeconds, boolean reference) {}
