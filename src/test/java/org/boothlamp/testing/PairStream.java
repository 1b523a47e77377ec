package org.boothlamp.testing;

import java.io.IOException;
import java.nio.file.Path;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/** Pairs that a test knows before it sends them. Safe to share. */
public interface PairStream {

  /** Number of pairs. */
  long pairs();

  /** Current count of a pair. */
  short current(long index);

  /** Voltage count of a pair. */
  short voltage(long index);

  /** The pairs from one index to another, the last not among them. */
  default PairStream between(long from, long until) {
    PairStream whole = this;
    return new PairStream() {
      @Override
      public long pairs() {
        return Math.min(until, whole.pairs()) - from;
      }

      @Override
      public short current(long index) {
        return whole.current(from + index);
      }

      @Override
      public short voltage(long index) {
        return whole.voltage(from + index);
      }
    };
  }

  /** Pairs that never end, repeat only after long, and take every value a byte can have. */
  static PairStream endless() {
    return new PairStream() {
      @Override
      public long pairs() {
        return Long.MAX_VALUE;
      }

      @Override
      public short current(long index) {
        return (short) (index * 31 + (index >> 9));
      }

      @Override
      public short voltage(long index) {
        return (short) (index % 5 == 0 ? 0 : index * 257);
      }
    };
  }

  /** The same for a converter that counts from 0 with so many bits, at most 15. */
  static PairStream endless(int bits) {
    PairStream all = endless();
    int mask = (1 << bits) - 1;
    return new PairStream() {
      @Override
      public long pairs() {
        return all.pairs();
      }

      @Override
      public short current(long index) {
        return (short) (all.current(index) & mask);
      }

      @Override
      public short voltage(long index) {
        return (short) (all.voltage(index) & mask);
      }
    };
  }

  /** The pairs of a WAV file, held in memory. */
  static PairStream ofWav(Path wav) throws IOException {
    byte[] bytes = bytesOf(wav);
    return new PairStream() {
      @Override
      public long pairs() {
        return bytes.length / 4;
      }

      @Override
      public short current(long index) {
        return at((int) index * 4);
      }

      @Override
      public short voltage(long index) {
        return at((int) index * 4 + 2);
      }

      private short at(int offset) {
        return (short) (bytes[offset] & 0xFF | bytes[offset + 1] << 8);
      }
    };
  }

  private static byte[] bytesOf(Path wav) throws IOException {
    try (AudioInputStream stream = AudioSystem.getAudioInputStream(wav.toFile())) {
      return stream.readAllBytes();
    } catch (UnsupportedAudioFileException notWav) {
      throw new IOException(wav + " is not a WAV file", notWav);
    }
  }
}
