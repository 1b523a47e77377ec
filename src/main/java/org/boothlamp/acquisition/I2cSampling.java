package org.boothlamp.acquisition;

/**
 * How a converter on I2C is set. Immutable.
 *
 * @param channels which input carries what
 * @param pairsPerSecond pairs to take, at least 200
 * @param fullScaleVolts one of {@link I2cDevice#fullScalesVolts}
 * @param conversionsPerSecond one of {@link I2cDevice#rates}, more than twice the pairs
 */
public record I2cSampling(
    ChannelPair channels, int pairsPerSecond, double fullScaleVolts, int conversionsPerSecond) {}
