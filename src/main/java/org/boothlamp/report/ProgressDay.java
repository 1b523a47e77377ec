package org.boothlamp.report;

import java.time.LocalDate;

/**
 * One day of a trainee's way with one pass. Immutable.
 *
 * @param day local day
 * @param figures what its runs come to
 */
public record ProgressDay(LocalDate day, Figures figures) {}
