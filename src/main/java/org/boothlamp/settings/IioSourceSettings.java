package org.boothlamp.settings;

import org.boothlamp.acquisition.ChannelPair;
import org.boothlamp.acquisition.IioAddress;

/**
 * A converter that the kernel drives as an industrial-I/O device. Immutable.
 *
 * @param address where it is
 * @param channels which input carries what
 * @param pairsPerSecond rate of its trigger, at least 200
 */
public record IioSourceSettings(IioAddress address, ChannelPair channels, int pairsPerSecond)
    implements SourceSettings {}
