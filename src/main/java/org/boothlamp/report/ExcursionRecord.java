package org.boothlamp.report;

import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;

/**
 * A spell in which one average was outside its window. Immutable.
 *
 * @param quantity which average
 * @param side below or above
 * @param startSeconds start, seconds since the start of its run
 * @param lengthSeconds length, at least 0.3
 * @param worst the average farthest out
 */
public record ExcursionRecord(
    Quantity quantity, Side side, double startSeconds, double lengthSeconds, double worst) {}
