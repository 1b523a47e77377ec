package org.boothlamp.calibration;

/** From which side a level was approached. */
public enum Direction {
  RISING,
  FALLING
}
