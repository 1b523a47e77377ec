package org.boothlamp.settings;

/**
 * Times of averaging and judging, whole hundredths of a second. Immutable.
 *
 * @param averageSeconds length of the trailing average, 0.1 to 5 s
 * @param settleSeconds time from the start of a segment that is not judged, at least the average's
 * @param holdSeconds how long a better level must hold before it shows, 0 to 5 s
 * @param excursionSeconds shortest excursion, 0.1 to 5 s
 */
public record JudgingSettings(
    double averageSeconds, double settleSeconds, double holdSeconds, double excursionSeconds) {}
