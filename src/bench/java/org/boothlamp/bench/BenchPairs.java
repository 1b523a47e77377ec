package org.boothlamp.bench;

import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/**
 * Pairs to run over and over: those of a recording, or an invented short arc where there is none.
 * Holds whole blocks only, so that going round is a jump of the data and not of the index.
 */
final class BenchPairs {

  static final int PAIRS_PER_SECOND = 5_000;

  /** Scale of the short-arc recording; for another one only the figures change, not the work. */
  static final PairScale SCALE =
      new PairScale(new ChannelScale(0.29296875, 0), new ChannelScale(0.0244140625, 0));

  final short[] current;
  final short[] voltage;

  private BenchPairs(int pairs) {
    int whole = pairs - pairs % SampleBlock.CAPACITY;
    current = new short[whole];
    voltage = new short[whole];
  }

  /** The pairs of a WAV file, or invented ones if there is no such file. */
  static BenchPairs load(String wav) throws IOException, UnsupportedAudioFileException {
    File file = new File(wav);
    if (!file.isFile()) {
      System.out.println("# no file " + file.getAbsolutePath() + ": an invented short arc instead");
      return invent();
    }
    try (AudioInputStream in = AudioSystem.getAudioInputStream(file)) {
      ByteBuffer bytes = ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
      BenchPairs pairs = new BenchPairs(bytes.remaining() / 4);
      for (int k = 0; k < pairs.current.length; k++) {
        pairs.current[k] = bytes.getShort();
        pairs.voltage[k] = bytes.getShort();
      }
      return pairs;
    }
  }

  /** Ten seconds of arc at 50 short circuits a second, then two seconds of nothing, five times. */
  private static BenchPairs invent() {
    BenchPairs pairs = new BenchPairs(60 * PAIRS_PER_SECOND);
    for (int k = 0; k < pairs.current.length; k++) {
      boolean arc = k % (12 * PAIRS_PER_SECOND) < 10 * PAIRS_PER_SECOND;
      boolean shorted = k % 100 < 20;
      int noise = k * 7919 % 13 - 6;
      pairs.current[k] = (short) ((arc ? shorted ? 700 : 420 : 0) + noise);
      pairs.voltage[k] = (short) ((arc ? shorted ? 100 : 850 : 2_900) + noise);
    }
    return pairs;
  }

  int blocks() {
    return current.length / SampleBlock.CAPACITY;
  }

  /** Copies block {@code number} into {@code block}, without its index. */
  void fill(SampleBlock block, int number) {
    int from = number * SampleBlock.CAPACITY;
    System.arraycopy(current, from, block.current, 0, SampleBlock.CAPACITY);
    System.arraycopy(voltage, from, block.voltage, 0, SampleBlock.CAPACITY);
    block.count = SampleBlock.CAPACITY;
  }
}
