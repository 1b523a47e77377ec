package org.boothlamp.settings;

/** How fast a source without hardware delivers its pairs. */
public enum Pace {
  /** As they would come from a booth. */
  REAL_TIME,
  /** As fast as they are taken. */
  FULL
}
