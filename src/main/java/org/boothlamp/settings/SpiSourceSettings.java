package org.boothlamp.settings;

import org.boothlamp.acquisition.ChannelPair;
import org.boothlamp.acquisition.SpiAddress;
import org.boothlamp.acquisition.SpiDevice;

/**
 * A converter on the SPI bus. Immutable.
 *
 * @param address where it is; its clock is no faster than the device bears
 * @param device what it is
 * @param channels which input carries what
 * @param pairsPerSecond pairs to take, at least 200 and no more than the clock allows
 */
public record SpiSourceSettings(
    SpiAddress address, SpiDevice device, ChannelPair channels, int pairsPerSecond)
    implements SourceSettings {}
