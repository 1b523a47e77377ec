package org.boothlamp.settings;

import java.time.LocalTime;

/**
 * A span of local time that a report covers, every day. Immutable.
 *
 * @param name for people, unique
 * @param start first moment
 * @param end first moment after it; earlier than {@code start} if the shift crosses midnight
 */
public record ShiftSettings(String name, LocalTime start, LocalTime end) {}
