package org.boothlamp.testing;

import java.util.Arrays;
import org.boothlamp.acquisition.FrameEncoder;
import org.boothlamp.acquisition.HelloFrame;
import org.boothlamp.acquisition.SamplesFrame;

/** What a front end's firmware writes to its line, byte by byte. Confined to one thread. */
public final class BoardFrames {

  private final PairStream pairs;
  private final FrameEncoder encoder = new FrameEncoder();
  private final byte[] wire = new byte[FrameEncoder.LONGEST_WIRE_BYTES];
  private final SamplesFrame samples = new SamplesFrame();
  private final HelloFrame hello = new HelloFrame();

  private long streamIndex;
  private int boardIndex;
  private int counter;

  /** A 12-bit board called "bench-1" that has just been switched on. */
  public BoardFrames(PairStream pairs, int pairsPerSecond) {
    this.pairs = pairs;
    hello.pairsPerSecond = pairsPerSecond;
    hello.lowestCount = -2048;
    hello.highestCount = 2047;
    hello.boardId("bench-1");
  }

  /** What the board says of itself; change it to make another board of it. */
  public HelloFrame says() {
    return hello;
  }

  /** A hello frame with the zero that ends it. */
  public byte[] hello() {
    return Arrays.copyOf(wire, encoder.hello(hello, wire));
  }

  /** The next {@code count} pairs as a frame with the zero that ends it. */
  public byte[] samples(int count) {
    for (int pair = 0; pair < count; pair++) {
      samples.current[pair] = pairs.current(streamIndex + pair);
      samples.voltage[pair] = pairs.voltage(streamIndex + pair);
    }
    samples.count = count;
    samples.firstIndex = boardIndex;
    samples.counter = counter;
    streamIndex += count;
    boardIndex += count;
    counter = counter + 1 & 0xFF;
    return Arrays.copyOf(wire, encoder.samples(samples, wire));
  }

  /** Starts again: index and counter go back to 0, the pairs go on. */
  public void restart() {
    boardIndex = 0;
    counter = 0;
  }

  /** Goes on as if the board had run until this index. */
  public void runTo(int boardIndex) {
    this.boardIndex = boardIndex;
  }

  /** Pairs of the stream that went into frames. */
  public long streamIndex() {
    return streamIndex;
  }
}
