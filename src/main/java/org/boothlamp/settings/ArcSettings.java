package org.boothlamp.settings;

/**
 * When an arc counts as burning. Times are whole hundredths of a second. Immutable.
 *
 * @param arcOnAmps current from which an arc burns, 5 to 100 A; a TIG procedure may lower it
 * @param confirmSeconds how long it must flow, 0.01 to 0.5 s
 * @param bridgeSeconds longest interruption inside a segment, 0 to 2 s
 * @param minSegmentSeconds shortest segment, 0.1 to 5 s
 * @param shortCircuitVolts volts below which it is a contact, 2 to 15 V
 */
public record ArcSettings(
    double arcOnAmps,
    double confirmSeconds,
    double bridgeSeconds,
    double minSegmentSeconds,
    double shortCircuitVolts) {}
