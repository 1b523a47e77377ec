package org.boothlamp.acquisition;

/**
 * Which inputs of a converter carry what. Immutable.
 *
 * @param current input of the current sensor, from 0
 * @param voltage input of the voltage divider, another one
 */
public record ChannelPair(int current, int voltage) {}
