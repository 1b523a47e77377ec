package org.boothlamp.calibration;

/**
 * One reason against a calibration. Immutable.
 *
 * @param reason which rule
 * @param message the rule, the value, and the next move
 */
public record Refusal(RefusalReason reason, String message) {}
