package org.boothlamp.acquisition;

/**
 * How much of the raw recordings is kept. Immutable.
 *
 * @param keepBytes most bytes of all of them together; 0 keeps none
 * @param keepDays how old they may become, days; 0 for any age
 * @param freeBytes what they must leave free on their disk, for the booth log
 */
public record RecordingLimits(long keepBytes, int keepDays, long freeBytes) {}
