package org.boothlamp.arc;

/** What a slot did to the state of the arc. */
public enum ArcChange {
  /** Nothing new. */
  NONE,
  /** Current began to flow: a contact, an arc, or noise that will be a touch. */
  CONTACT_BEGAN,
  /** The contact turned out to be an arc. */
  ARC_CONFIRMED,
  /** The current ended without an arc worth the name: a touch. */
  TOUCH_ENDED,
  /** The current has been off for longer than the bridge: a segment is complete. */
  SEGMENT_ENDED
}
