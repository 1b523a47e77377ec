package org.boothlamp.page;

/** What a view asks of its visitor. */
public enum Right {
  /** Anybody: the sign-on form, style sheets, scripts. */
  NONE,
  /** Seeing the booth and its runs. */
  SEE,
  /** Signing in at the booth, and entering what belongs to a run. */
  ENTER,
  /** Seeing all booths of the class. */
  CLASS,
  /** Seeing how the monitor itself is. */
  STATE
}
