package org.boothlamp.report;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.DoubleConsumer;

/**
 * The arc as a sound: the volts of a raw recording as a WAV file of one channel and 16 bits, at the
 * recording's own rate where a browser plays it.
 *
 * <p>The steady part is taken away. The level is set by what nearly all of the sound stays below,
 * so that one spike at the strike does not make the short circuits inaudible; what goes beyond is
 * bent, never clipped. Reads the window twice, and holds nothing but the file it makes.
 */
public final class ArcSound {

  /** Most samples in one file, 2 MB: the monitor that makes it has little memory. */
  public static final int MOST_SAMPLES = 1_000_000;

  private static final int HEADER_BYTES = 44;

  /** Slower than this is arc length, not sound; short circuits come at 20 a second and more. */
  private static final double LOWEST_HZ = 10;

  /** Share of the sound that stays below the knee. */
  private static final double SHARE_BELOW_KNEE = 0.995;

  /** Up to here of full scale the sound is straight. */
  private static final double KNEE = 0.5;

  /** Nothing reaches more. */
  private static final double LIMIT = 0.95;

  /** Quieter arcs are not made louder: it would be the converter's noise. */
  private static final double LEAST_KNEE_VOLTS = 1;

  private static final double FADE_SECONDS = 0.005;

  private ArcSound() {}

  /** Longest window of a recording that can be made a sound, s. */
  public static double mostSeconds(RawRecording recording) {
    return (double) MOST_SAMPLES / SoundRate.of(recording.pairsPerSecond());
  }

  /**
   * The sound of a window; what is beyond {@link #mostSeconds} is left away.
   *
   * @return a whole WAV file
   */
  public static byte[] wav(RawWindow window) {
    int rate = window.recording().pairsPerSecond();
    long most = (long) (mostSeconds(window.recording()) * rate);
    RawWindow heard =
        new RawWindow(window.recording(), window.firstPair(), Math.min(most, window.pairs()));
    Loudness loudness = new Loudness();
    heard.read(new WithoutSteadyPart(heard, loudness));
    Samples samples = new Samples(heard, loudness.kneeVolts());
    SoundRate sound = SoundRate.from(rate, samples);
    heard.read(new WithoutSteadyPart(heard, sound::take));
    sound.finish();
    return samples.wav(SoundRate.of(rate));
  }

  /** A high-pass of first order; missing pairs are silence, not a step. */
  private static final class WithoutSteadyPart implements RawPairSink {

    private final RawWindow window;
    private final DoubleConsumer out;
    private final double keep;
    private boolean begun;
    private double before;
    private double now;

    WithoutSteadyPart(RawWindow window, DoubleConsumer out) {
      this.window = window;
      this.out = out;
      keep = Math.exp(-2 * Math.PI * LOWEST_HZ / window.recording().pairsPerSecond());
    }

    @Override
    public void take(short current, short voltage) {
      double volts = window.recording().scale().voltage().toUnits(voltage);
      before = begun ? before : volts;
      begun = true;
      give(volts);
    }

    @Override
    public void miss() {
      give(before);
    }

    private void give(double volts) {
      now = keep * (now + volts - before);
      before = volts;
      out.accept(now);
    }
  }

  /** How loud the sound is, told from all of it. */
  private static final class Loudness implements DoubleConsumer {

    private static final double BIN_VOLTS = 0.05;

    private final long[] bins = new long[4_000];
    private long count;

    @Override
    public void accept(double volts) {
      bins[(int) Math.min(bins.length - 1, Math.abs(volts) / BIN_VOLTS)]++;
      count++;
    }

    double kneeVolts() {
      long below = 0;
      int bin = 0;
      while (bin < bins.length - 1 && below + bins[bin] < SHARE_BELOW_KNEE * count) {
        below += bins[bin++];
      }
      return Math.max(LEAST_KNEE_VOLTS, (bin + 1) * BIN_VOLTS);
    }
  }

  /** The file as it grows. */
  private static final class Samples implements DoubleConsumer {

    private final double kneeVolts;
    private final int fadeSamples;
    private final int expected;
    private final ByteBuffer bytes;
    private int count;

    Samples(RawWindow window, double kneeVolts) {
      this.kneeVolts = kneeVolts;
      int from = window.recording().pairsPerSecond();
      int rate = SoundRate.of(from);
      fadeSamples = (int) Math.max(1, FADE_SECONDS * rate);
      expected = (int) Math.ceil((double) window.pairs() * rate / from);
      bytes = ByteBuffer.allocate(HEADER_BYTES + 2 * (expected + 1));
      bytes.order(ByteOrder.LITTLE_ENDIAN).position(HEADER_BYTES);
    }

    @Override
    public void accept(double volts) {
      double edge = Math.min(count, Math.max(0, expected - 1 - count)) / (double) fadeSamples;
      double level = bend(KNEE * volts / kneeVolts) * Math.min(1, edge);
      if (bytes.remaining() > 1) {
        bytes.putShort((short) Math.round(level * Short.MAX_VALUE));
        count++;
      }
    }

    /** Straight up to the knee, then ever flatter towards the limit, without a corner. */
    private static double bend(double level) {
      double beyond = Math.abs(level) - KNEE;
      double room = LIMIT - KNEE;
      return beyond <= 0
          ? level
          : Math.signum(level) * (KNEE + room * (1 - Math.exp(-beyond / room)));
    }

    byte[] wav(int rate) {
      int dataBytes = bytes.position() - HEADER_BYTES;
      bytes.position(0);
      tag("RIFF").putInt(HEADER_BYTES - 8 + dataBytes);
      tag("WAVE");
      tag("fmt ").putInt(16).putShort((short) 1).putShort((short) 1);
      bytes.putInt(rate).putInt(2 * rate).putShort((short) 2).putShort((short) 16);
      tag("data").putInt(dataBytes);
      return Arrays.copyOf(bytes.array(), HEADER_BYTES + dataBytes);
    }

    private ByteBuffer tag(String name) {
      return bytes.put(name.getBytes(StandardCharsets.US_ASCII));
    }
  }
}
