package org.boothlamp.report;

/**
 * A contact of the electrode that did not become a segment. Immutable.
 *
 * @param trainee trainee code, or empty
 * @param startWallMillis time of day, ms since the epoch
 * @param startSeconds start, seconds since the source's first pair
 * @param lengthSeconds length
 * @param stuck true for more than 0.5 s at short-circuit volts
 */
public record TouchRecord(
    String trainee,
    long startWallMillis,
    double startSeconds,
    double lengthSeconds,
    boolean stuck) {}
