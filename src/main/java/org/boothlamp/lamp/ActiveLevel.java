package org.boothlamp.lamp;

/** The level of a pin that lights its lamp. */
public enum ActiveLevel {
  /** A high pin lights. */
  HIGH,
  /** A low pin lights. */
  LOW
}
