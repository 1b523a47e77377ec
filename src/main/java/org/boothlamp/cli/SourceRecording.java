package org.boothlamp.cli;

import java.nio.file.Path;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.signal.PairScale;

/**
 * Records a source for a while. What is written is readable up to the last second however it ends.
 * Confined to one thread.
 */
final class SourceRecording {

  private static final long LONGEST_SILENCE_NANOS = 3_000_000_000L;

  private final Path wav;
  private final int lengthSeconds;
  private final NanoClock clock;
  private final SampleBlock block = new SampleBlock();
  private long silentSinceNanos;
  private long pairs;
  private long missingPairs;
  private int pairsPerSecond = 1;

  SourceRecording(Path wav, int lengthSeconds, NanoClock clock) {
    this.wav = wav;
    this.lengthSeconds = lengthSeconds;
    this.clock = clock;
  }

  /**
   * Records until the time is over or the source has ended; missing pairs count.
   *
   * @throws PartsException if no pairs come for 3 s, or come at another rate
   */
  void record(SampleSource source, PairScale scale) {
    silentSinceNanos = clock.nanoTime();
    if (!next(source)) {
      throw silent(source, "delivers no pairs");
    }
    pairsPerSecond = source.format().pairsPerSecond();
    try (RecordingWriter writer = new RecordingWriter(wav, pairsPerSecond, scale)) {
      write(source, writer);
    }
  }

  private void write(SampleSource source, RecordingWriter writer) {
    long wanted = (long) lengthSeconds * pairsPerSecond;
    do {
      block.count = (int) Math.min(block.count, wanted - writer.pairs());
      writer.write(block);
      pairs = writer.pairs();
      missingPairs = writer.missingPairs();
    } while (pairs < wanted && next(source));
  }

  /** The next pairs; false if the source has ended. */
  private boolean next(SampleSource source) {
    SampleSource.Outcome outcome = source.read(block);
    while (outcome == SampleSource.Outcome.NOTHING) {
      if (clock.nanoTime() - silentSinceNanos > LONGEST_SILENCE_NANOS) {
        throw silent(source, "has delivered nothing for 3 s");
      }
      outcome = source.read(block);
    }
    silentSinceNanos = clock.nanoTime();
    if (pairs > 0 && source.format().pairsPerSecond() != pairsPerSecond) {
      throw silent(source, "has changed its rate");
    }
    return outcome == SampleSource.Outcome.PAIRS;
  }

  private PartsException silent(SampleSource source, String what) {
    String why = source.trouble() == null ? "boothlamp check looks at it" : source.trouble();
    String kept = pairs == 0 ? "" : "; what came before is in " + wav;
    return new PartsException("the source " + what + kept + "; " + why, null);
  }

  double seconds() {
    return (double) pairs / pairsPerSecond;
  }

  long missingPairs() {
    return missingPairs;
  }
}
