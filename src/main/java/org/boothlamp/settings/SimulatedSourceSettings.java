package org.boothlamp.settings;

/**
 * A simulated booth. Immutable.
 *
 * @param process {@code stick}, {@code short-arc} or {@code tig}
 * @param pairsPerSecond 200 to 50000
 * @param seed the same seed gives the same pairs
 * @param pace how fast they are delivered
 */
public record SimulatedSourceSettings(String process, int pairsPerSecond, long seed, Pace pace)
    implements SourceSettings {}
