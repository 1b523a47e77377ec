package org.boothlamp.settings;

import java.nio.file.Path;

/**
 * A lamp on pins. Immutable.
 *
 * @param redPin pin number, BCM numbering with gpiod, the kernel's with linuxfs
 * @param amberPin likewise; all pins differ
 * @param greenPin likewise
 * @param heartbeatPin pin that toggles while the monitor lives, or {@link #NO_PIN}
 * @param activeLow true if a lamp is lit by a low pin
 * @param provider what drives the pins
 * @param folder folder of the pins with linuxfs, null with gpiod
 */
public record GpioLampSettings(
    int redPin,
    int amberPin,
    int greenPin,
    int heartbeatPin,
    boolean activeLow,
    GpioProvider provider,
    Path folder) {

  /** No heartbeat is wired. */
  public static final int NO_PIN = -1;
}
