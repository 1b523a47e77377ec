package org.boothlamp.lamp;

/** Whether the console lamp adds colour to its words. */
public enum ConsoleColour {
  /** Words and symbols only. */
  NONE,
  /** ANSI colours around them. */
  ANSI
}
