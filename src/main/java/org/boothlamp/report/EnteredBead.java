package org.boothlamp.report;

/**
 * A bead's length as somebody measured it after the weld. Immutable.
 *
 * @param lengthMillimetres above 0
 * @param wallMillis time of day when it was entered, ms since the epoch
 * @param by in which role
 * @param note in the words of whoever entered it; may be empty
 */
public record EnteredBead(double lengthMillimetres, long wallMillis, EnteredBy by, String note) {}
