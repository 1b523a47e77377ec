package org.boothlamp.report;

/** Whether a text may carry colour. Nothing is ever said by colour alone. */
public enum Colour {
  /** Letters only: for files, pipes and paper. */
  PLAIN,
  /** ANSI escape sequences (ECMA-48 SGR): for a terminal. */
  ANSI
}
