package org.boothlamp.settings;

/**
 * The counts that a converter can give. Immutable.
 *
 * @param lowest lowest count
 * @param highest highest count, above the lowest
 */
public record CountRange(int lowest, int highest) {}
