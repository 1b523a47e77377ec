package org.boothlamp.arc;

/** Whether an arc burns. */
public enum ArcState {
  /** No current flows, and no bridge is being waited for. */
  OFF,
  /** Current flows; whether it is an arc is not known yet. */
  CONTACT,
  /** An arc burns, or is out for no longer than a bridge. */
  ARC
}
