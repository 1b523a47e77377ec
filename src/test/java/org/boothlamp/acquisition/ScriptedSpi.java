package org.boothlamp.acquisition;

import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBase;
import com.pi4j.io.spi.SpiConfig;
import com.pi4j.io.spi.SpiProvider;
import com.pi4j.io.spi.SpiProviderBase;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;

/**
 * A converter behind a Pi4J provider: answers with the counts of a stream, each transfer takes its
 * time on the clock, and a test can break it, lift its data line, or read what was sent to it.
 */
final class ScriptedSpi {

  private final HandTurnedClock clock;
  private final SpiDevice device;
  private final PairStream pairs;
  private long transferNanos;
  private boolean missing;
  private boolean broken;
  private boolean lifted;
  private long transfers;
  private int openings;
  private int open;
  private SpiConfig config;
  private List<String> frames;

  ScriptedSpi(HandTurnedClock clock, SpiDevice device, PairStream pairs) {
    this.clock = clock;
    this.device = device;
    this.pairs = pairs;
  }

  SpiProvider provider() {
    return new Provider();
  }

  SpiSource source(ChannelPair channels, int pairsPerSecond) {
    SpiAddress address = new SpiAddress(0, 1, 1_000_000);
    return new SpiSource(
        new Pi4jSpi(address, this::provider),
        address.path(),
        device,
        channels,
        pairsPerSecond,
        clock,
        clock::advanceNanos);
  }

  void takeNanos(long eachTransfer) {
    transferNanos = eachTransfer;
  }

  void setMissing(boolean isMissing) {
    missing = isMissing;
  }

  void setBroken(boolean isBroken) {
    broken = isBroken;
  }

  void setLifted(boolean isLifted) {
    lifted = isLifted;
  }

  void recordFrames() {
    frames = new ArrayList<>();
  }

  List<String> frames() {
    return frames;
  }

  int openings() {
    return openings;
  }

  /** Openings that were not closed. */
  int open() {
    return open;
  }

  SpiConfig config() {
    return config;
  }

  private int answer(byte[] out, byte[] in) {
    clock.advanceNanos(transferNanos);
    if (broken) {
      return -1;
    }
    if (frames != null) {
      frames.add(HexFormat.ofDelimiter(" ").formatHex(out));
    }
    long pair = transfers / 2;
    int count = transfers % 2 == 0 ? pairs.current(pair) : pairs.voltage(pair);
    transfers++;
    in[0] = (byte) 0xFF;
    int nullBit = device.highestCount() + 1;
    int undefined = 0xFFFF & -(2 * nullBit);
    int word = lifted ? 0xFFFF : undefined | count;
    in[1] = (byte) (word >> 8);
    in[2] = (byte) word;
    return out.length;
  }

  private final class Provider extends SpiProviderBase {

    Provider() {
      super("scripted-spi");
    }

    @Override
    public Spi create(SpiConfig wanted) {
      if (missing) {
        throw new IllegalStateException("Failed to open SPI device");
      }
      config = wanted;
      openings++;
      open++;
      Spi spi = new Converter(this, wanted);
      context.registry().add(spi);
      return spi;
    }
  }

  private final class Converter extends SpiBase {

    Converter(SpiProvider provider, SpiConfig config) {
      super(provider, config);
    }

    @Override
    public int transfer(byte[] out, int outOffset, byte[] in, int inOffset, int length) {
      return answer(out, in);
    }

    @Override
    public int read() {
      throw new UnsupportedOperationException("one way only");
    }

    @Override
    public int read(byte[] buffer, int offset, int length) {
      throw new UnsupportedOperationException("one way only");
    }

    @Override
    public int write(byte b) {
      throw new UnsupportedOperationException("one way only");
    }

    @Override
    public int write(byte[] data, int offset, int length) {
      throw new UnsupportedOperationException("one way only");
    }

    @Override
    public void close() {
      open--;
      super.close();
    }
  }
}
