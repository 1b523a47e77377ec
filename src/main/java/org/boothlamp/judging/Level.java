package org.boothlamp.judging;

/** What the averages say of the arc, from best to worst. */
public enum Level {
  /** Every average is inside its window, clear of the caution band. */
  GREEN,
  /** Inside, but one average is nearer to a limit than the caution band. */
  AMBER,
  /** One average is outside its window. */
  RED;

  /** The worse of this level and another. */
  public Level worse(Level other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
