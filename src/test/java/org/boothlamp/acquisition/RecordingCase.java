package org.boothlamp.acquisition;

import java.nio.file.Path;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.PairStream;

/** Recordings for tests. */
final class RecordingCase {

  static final PairScale SCALE =
      new PairScale(new ChannelScale(0.29296875, -3.5), new ChannelScale(-0.0244140625, 12));

  private RecordingCase() {}

  /** Writes the first {@code count} pairs of an endless stream. */
  static Path write(Path wav, int pairsPerSecond, int count) {
    PairStream pairs = PairStream.endless();
    SampleBlock block = new SampleBlock();
    try (RecordingWriter writer = new RecordingWriter(wav, pairsPerSecond, SCALE)) {
      for (int index = 0; index < count; index += block.count) {
        fill(block, pairs, index, Math.min(700, count - index));
        writer.write(block);
      }
    }
    return wav;
  }

  static void fill(SampleBlock block, PairStream pairs, long firstIndex, int count) {
    block.firstIndex = firstIndex;
    block.count = count;
    for (int pair = 0; pair < count; pair++) {
      block.current[pair] = pairs.current(firstIndex + pair);
      block.voltage[pair] = pairs.voltage(firstIndex + pair);
    }
  }
}
