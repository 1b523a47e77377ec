package org.boothlamp.acquisition;

import java.util.ArrayDeque;

/**
 * Which index of the source the pairs of a {@link PairRing} have: one span for each stretch without
 * a gap. Confined to the recorder's thread.
 */
final class PairSpans {

  /** Pairs from {@code position} on count from {@code index}, until the next span. */
  record Span(long position, long index, int pairsPerSecond) {

    long indexAt(long otherPosition) {
      return index + otherPosition - position;
    }
  }

  private final ArrayDeque<Span> spans = new ArrayDeque<>();

  void add(RingMark jump) {
    spans.add(new Span(jump.position, jump.index, jump.pairsPerSecond));
  }

  /** The newest; null before the first pair. */
  Span last() {
    return spans.peekLast();
  }

  /** The span that a position lies in; there must be one. */
  Span at(long position) {
    Span found = spans.getFirst();
    for (Span span : spans) {
      if (span.position() > position) {
        break;
      }
      found = span;
    }
    return found;
  }

  /** Where the span of a position ends; {@code open} if it is the last. */
  long endOf(long position, long open) {
    for (Span span : spans) {
      if (span.position() > position) {
        return Math.min(open, span.position());
      }
    }
    return open;
  }

  /** Forgets what lies wholly before a position. */
  void forgetBefore(long position) {
    while (spans.size() > 1 && endOf(spans.getFirst().position(), Long.MAX_VALUE) <= position) {
      spans.removeFirst();
    }
  }
}
