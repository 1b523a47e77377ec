package org.boothlamp.settings;

/**
 * A front end on a serial line. Immutable.
 *
 * @param port name of the line, such as {@code /dev/ttyACM0}
 * @param baud line speed, 1200 to 4000000
 * @param counts the counts of its converter, for a check without the front end; null if not stated
 */
public record SerialSourceSettings(String port, int baud, CountRange counts)
    implements SourceSettings {}
