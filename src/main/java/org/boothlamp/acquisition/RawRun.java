package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.file.Path;
import javax.sound.sampled.AudioInputStream;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.report.RawPairSink;
import org.boothlamp.report.RawRecording;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Slot;

/**
 * The raw recording of a run, to be read again in parts: through one block's worth of bytes,
 * however long the part. Each reading opens the file anew. Safe to share.
 */
public final class RawRun implements RawRecording {

  private final Recording recording;
  private final long contactPair;

  private RawRun(Recording recording, long contactPair) {
    this.recording = recording;
    this.contactPair = contactPair;
  }

  /**
   * A segment's recording.
   *
   * @throws SourceException if it is not a whole recording
   */
  public static RawRun open(Path wav) {
    Recording recording = Recording.open(wav);
    long contact = RecordingScale.readSheet(RecordingScale.fileBeside(wav)).contactPair();
    return new RawRun(recording, contact < 0 ? usualContact(recording) : contact);
  }

  /** Where it is not said, a recording begins as long before its contact as most of them do. */
  private static long usualContact(Recording recording) {
    long margin = (long) SegmentSpan.MARGIN_SLOTS * recording.pairsPerSecond() / Slot.PER_SECOND;
    return Math.min(margin, recording.pairs());
  }

  @Override
  public int pairsPerSecond() {
    return recording.pairsPerSecond();
  }

  @Override
  public PairScale scale() {
    return recording.scale();
  }

  @Override
  public double startSeconds() {
    return -(double) contactPair / pairsPerSecond();
  }

  @Override
  public double endSeconds() {
    return (double) (recording.pairs() - contactPair) / pairsPerSecond();
  }

  @Override
  public void read(long firstPair, long pairs, RawPairSink sink) {
    if (firstPair < 0 || pairs < 0 || firstPair + pairs > recording.pairs()) {
      throw new IndexOutOfBoundsException(
          recording.wav() + ": pairs " + firstPair + " to " + (firstPair + pairs));
    }
    try (AudioInputStream stream = Recording.openStream(recording.wav())) {
      skip(stream, firstPair * Frames.PAIR_BYTES);
      handOver(stream, firstPair, pairs, sink);
    } catch (IOException unreadable) {
      throw Recording.unreadable(recording.wav(), unreadable);
    }
  }

  private void skip(AudioInputStream stream, long bytes) throws IOException {
    long left = bytes;
    while (left > 0) {
      long skipped = stream.skip(left);
      if (skipped <= 0) {
        throw shorter();
      }
      left -= skipped;
    }
  }

  private void handOver(AudioInputStream stream, long firstPair, long pairs, RawPairSink sink)
      throws IOException {
    byte[] bytes = new byte[SampleBlock.CAPACITY * Frames.PAIR_BYTES];
    int gap = 0;
    long end = firstPair + pairs;
    for (long at = firstPair; at < end; ) {
      int count = (int) Math.min(SampleBlock.CAPACITY, end - at);
      fill(stream, bytes, count * Frames.PAIR_BYTES);
      for (int k = 0; k < count; k++, at++) {
        while (gap < recording.gaps().size() && recording.gaps().get(gap).end() <= at) {
          gap++;
        }
        if (gap < recording.gaps().size() && recording.gaps().get(gap).firstPair() <= at) {
          sink.miss();
        } else {
          int from = k * Frames.PAIR_BYTES;
          sink.take((short) Frames.getU16(bytes, from), (short) Frames.getU16(bytes, from + 2));
        }
      }
    }
  }

  private void fill(AudioInputStream stream, byte[] bytes, int length) throws IOException {
    int held = 0;
    while (held < length) {
      int count = stream.read(bytes, held, length - held);
      if (count <= 0) {
        throw shorter();
      }
      held += count;
    }
  }

  private SourceException shorter() {
    return new SourceException(
        Reason.FAILED,
        recording.wav().toString(),
        "the recording became shorter while it was read",
        "let nothing write to the file meanwhile");
  }
}
