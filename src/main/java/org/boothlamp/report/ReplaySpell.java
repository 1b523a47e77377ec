package org.boothlamp.report;

/**
 * A stretch of a run in which one and the same thing happens. Immutable.
 *
 * @param fromSeconds start, seconds since the run's start
 * @param untilSeconds end, outside
 * @param says what happens, as a sentence in the reader's language
 */
public record ReplaySpell(double fromSeconds, double untilSeconds, String says) {}
