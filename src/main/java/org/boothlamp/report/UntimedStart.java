package org.boothlamp.report;

/**
 * What was logged under one start of the monitor in which the clock was never set: in order, but
 * nobody knows when. Immutable.
 *
 * @param number number of the start; a higher one was later
 * @param records what it holds; times of day in it mean nothing
 */
public record UntimedStart(long number, ShiftRecords records) {}
