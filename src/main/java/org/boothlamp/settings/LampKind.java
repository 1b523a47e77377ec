package org.boothlamp.settings;

/** Where the signal is shown. */
public enum LampKind {
  /** Pins of the single-board computer. */
  GPIO,
  /** The front end on the serial line that the samples come from. */
  SERIAL,
  /** A line of text at each change. */
  CONSOLE,
  /** A file with a row for each change. */
  TRACE
}
