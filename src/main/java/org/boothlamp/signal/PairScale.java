package org.boothlamp.signal;

/**
 * The scales of both channels of a sample pair. Immutable.
 *
 * @param current counts to amps
 * @param voltage counts to volts
 */
public record PairScale(ChannelScale current, ChannelScale voltage) {}
