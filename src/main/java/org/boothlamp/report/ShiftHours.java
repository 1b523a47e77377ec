package org.boothlamp.report;

import java.time.LocalTime;

/**
 * When a shift of the school begins and ends, on every day. Immutable.
 *
 * @param name for people
 * @param start first moment
 * @param end first moment after it; earlier than {@code start} if the shift crosses midnight
 */
public record ShiftHours(String name, LocalTime start, LocalTime end) {}
