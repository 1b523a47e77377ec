package org.boothlamp.report;

/**
 * Something that happened to the booth besides welding. Immutable.
 *
 * @param what the event's word
 * @param fault true if the lamp was in fault meanwhile
 * @param startWallMillis time of day at the start, ms since the epoch
 * @param startSeconds start, seconds since the source's first pair; NaN if it did not come from the
 *     source
 * @param lengthSeconds how long it lasted; 0 for a moment, NaN if its end was never seen
 * @param count how many, where the event counts something; else 0
 * @param detail more in words, may be empty
 */
public record EventRecord(
    String what,
    boolean fault,
    long startWallMillis,
    double startSeconds,
    double lengthSeconds,
    long count,
    String detail) {}
