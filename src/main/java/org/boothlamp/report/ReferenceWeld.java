package org.boothlamp.report;

/**
 * That an instructor shows a run as an example. Immutable.
 *
 * @param wallMillis time of day when it was marked, ms since the epoch
 * @param by in which role
 * @param words the instructor's words; may be empty
 */
public record ReferenceWeld(long wallMillis, EnteredBy by, String words) {}
