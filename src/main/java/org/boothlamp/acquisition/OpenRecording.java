package org.boothlamp.acquisition;

import java.io.IOException;
import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/**
 * The recording of the contact that was last told of. Its file is begun when it is likely to become
 * a segment: most contacts are touches. Confined to the recorder's thread.
 */
final class OpenRecording {

  private final RecordingFolder folder;
  private final RecordingName name;
  private final RecordingSheet sheet;
  private final SegmentSpan span;
  private final long overrunBefore;
  private long overrunPairs;
  private final short[] current = new short[SampleBlock.CAPACITY];
  private final short[] voltage = new short[SampleBlock.CAPACITY];
  private RecordingWriter writer;
  private long position;
  private long pairsAtLimitCheck;
  private boolean complete;

  /**
   * Nothing is written yet.
   *
   * @param began the mark of the contact
   * @param position position of the oldest pair held
   */
  OpenRecording(
      RecordingFolder folder,
      String booth,
      String machine,
      RingMark began,
      SegmentSpan span,
      long position) {
    this.folder = folder;
    this.span = span;
    this.position = position;
    overrunBefore = began.overrunPairs;
    name = new RecordingName(began.wallMillis, machine, began.monotonicNanos);
    boolean planned = began.assignment.plan() != null;
    RecordedSegment segment =
        new RecordedSegment(
            booth,
            began.wallMillis,
            began.assignment.trainee(),
            planned ? began.assignment.plan().procedure().id() : "",
            planned ? began.assignment.plan().pass().name() : "",
            span.contact() - span.origin());
    sheet =
        new RecordingSheet(
            scaleOf(began), List.of(), segment.toToml(), span.contact() - span.origin());
  }

  /** With the clamp's zero where it was when the contact began: a replay cannot learn it again. */
  private static PairScale scaleOf(RingMark began) {
    ChannelScale current = began.scale.current();
    return new PairScale(
        new ChannelScale(current.unitsPerCount(), current.zeroCount() + began.currentOffsetCounts),
        began.scale.voltage());
  }

  SegmentSpan span() {
    return span;
  }

  RecordingName name() {
    return name;
  }

  /** Position of the oldest pair that is still needed. */
  long position() {
    return position;
  }

  /** True if nothing more will be written. */
  boolean isComplete() {
    return complete;
  }

  /** The segment has ended. */
  void end(RingMark ended) {
    span.end(ended.slot);
    overrunPairs = ended.overrunPairs - overrunBefore;
  }

  /** Pairs of this segment that found the ring full, once its end is known. */
  long overrunPairs() {
    return overrunPairs;
  }

  /** Writes what there is up to a position; makes the files if that was not done yet. */
  void writeUpTo(long upTo, PairRing ring, PairSpans spans) throws IOException {
    open();
    while (position < upTo && !complete) {
      PairSpans.Span stretch = spans.at(position);
      long index = stretch.indexAt(position);
      if (stretch.pairsPerSecond() != span.pairsPerSecond() || index >= span.end()) {
        complete = true;
      } else {
        long most = Math.min(spans.endOf(position, upTo) - position, span.end() - index);
        writeStretch(index, (int) Math.min(most, SampleBlock.CAPACITY), ring);
      }
    }
    complete |= position > 0 && lastIndex(spans) + 1 >= span.end();
  }

  private long lastIndex(PairSpans spans) {
    return spans.at(position - 1).indexAt(position - 1);
  }

  private void writeStretch(long index, int most, PairRing ring) throws IOException {
    if (index < span.firstIncluded()) {
      position += Math.min(most, span.firstIncluded() - index);
      return;
    }
    long missing = index - span.origin() - writer.pairs();
    if (missing > 0) {
      writer.writeGap(missing);
    }
    ring.copyOut(position, current, voltage, most);
    writer.write(current, voltage, most);
    position += most;
    if (writer.pairs() - pairsAtLimitCheck >= span.pairsPerSecond()) {
      pairsAtLimitCheck = writer.pairs();
      folder.keepWithinLimits(writer.pairs() * Frames.PAIR_BYTES);
    }
  }

  private void open() throws IOException {
    if (writer == null) {
      folder.makeIfMissing();
      folder.keepWithinLimits(0);
      writer =
          new RecordingWriter(folder.part(name), folder.sheet(name), span.pairsPerSecond(), sheet);
    }
  }

  /** The segment is over and its recording whole. */
  void finish() throws IOException {
    complete = true;
    open();
    writer.finish();
    folder.publish(name);
    folder.keepWithinLimits(0);
  }

  /** It was a touch, or it cannot be written: nothing of it stays. */
  void discard() throws IOException {
    if (writer != null) {
      writer.abandon();
    }
    folder.discard(name);
  }
}
