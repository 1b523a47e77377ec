package org.boothlamp.acquisition;

import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Slot;

/**
 * What happened at a place of the pairs' stream. One object is filled again and again. Confined to
 * one thread at a time.
 */
final class RingMark {

  /** What happened, and which fields tell of it. */
  enum Kind {
    /** {@code position, index, pairsPerSecond}: the pairs from here on count from another index. */
    JUMP,
    /** {@code slot}, and the fields below it: a contact began with this slot. */
    CONTACT,
    /** {@code slot}: it was a touch, and this is the first slot after it. */
    TOUCH_ENDED,
    /** {@code slot}: it was a segment, and this is the first slot after it. */
    SEGMENT_ENDED
  }

  Kind kind = Kind.JUMP;
  long position;
  long index;
  int pairsPerSecond;

  long slot;
  long wallMillis;
  long monotonicNanos;
  PairScale scale;
  int currentOffsetCounts;
  Assignment assignment = Assignment.NONE;

  /** Pairs that had found the ring full by then. */
  long overrunPairs;

  /** Becomes the mark of a contact's beginning or end; the entry is one of these. */
  void setContact(Kind ofEntry, LogEntry entry, long overrunSoFar) {
    kind = ofEntry;
    double seconds =
        entry.startSeconds + (kind == Kind.SEGMENT_ENDED ? entry.figures.lengthSeconds : 0);
    slot = Math.round(seconds * Slot.PER_SECOND);
    wallMillis = entry.wallMillis;
    monotonicNanos = entry.monotonicNanos;
    scale = entry.scale;
    currentOffsetCounts = entry.currentOffsetCounts;
    assignment = entry.assignment;
    overrunPairs = overrunSoFar;
  }

  void setJump(long atPosition, long toIndex, int rate) {
    kind = Kind.JUMP;
    position = atPosition;
    index = toIndex;
    pairsPerSecond = rate;
  }

  void set(RingMark other) {
    kind = other.kind;
    position = other.position;
    index = other.index;
    pairsPerSecond = other.pairsPerSecond;
    slot = other.slot;
    wallMillis = other.wallMillis;
    monotonicNanos = other.monotonicNanos;
    scale = other.scale;
    currentOffsetCounts = other.currentOffsetCounts;
    assignment = other.assignment;
    overrunPairs = other.overrunPairs;
  }
}
