package org.boothlamp.settings;

/** What drives the pins. */
public enum GpioProvider {
  /** The kernel's character device, on boards that the pin library recognises. */
  GPIOD,
  /** Plain files in a sysfs-like folder, on any other board. */
  LINUXFS
}
