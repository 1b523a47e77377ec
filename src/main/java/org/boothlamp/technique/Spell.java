package org.boothlamp.technique;

import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;

/**
 * An excursion as the judging found it: a spell in which one average was outside its window.
 * Immutable.
 *
 * @param quantity which average
 * @param side on which side
 * @param startSeconds first judgement outside, since the start of the run
 * @param endSeconds first one inside again, or the end of the run; after the start
 */
public record Spell(Quantity quantity, Side side, double startSeconds, double endSeconds) {

  public Spell {
    if (!(endSeconds >= startSeconds)) {
      throw new IllegalArgumentException(
          "a spell must end after its start: startSeconds="
              + startSeconds
              + ", endSeconds="
              + endSeconds);
    }
  }

  /** How long it lasted, s. */
  public double seconds() {
    return endSeconds - startSeconds;
  }
}
