package org.boothlamp.lamp;

/** How red looks on the lamp. */
public enum RedStyle {
  /** Red stays on. */
  STEADY,
  /** Red is on and off at 1 Hz, for eyes that cannot tell red from green. */
  PULSING
}
