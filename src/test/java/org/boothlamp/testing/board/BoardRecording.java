package org.boothlamp.testing.board;

import java.nio.file.Path;
import java.util.SplittableRandom;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/**
 * Writes one run of stick welding as plateaus that show each level for some seconds: in the window,
 * near its upper limit, above it, and back. Invented data: the lamp's way from a sensor to a pin is
 * what it is for.
 */
public final class BoardRecording {

  private static final int PAIRS_PER_SECOND = 2_000;
  private static final PairScale SCALE =
      new PairScale(new ChannelScale(0.05, 0), new ChannelScale(0.01, 0));
  private static final double OPEN_CIRCUIT_VOLTS = 70;
  private static final double ARC_VOLTS = 23;

  /** No sensor stands still. */
  private static final double NOISE_AMPS = 1;

  private static final double NOISE_VOLTS = 0.3;

  private final SplittableRandom random = new SplittableRandom(1);
  private final RecordingWriter writer;

  private BoardRecording(RecordingWriter writer) {
    this.writer = writer;
  }

  /**
   * Writes it.
   *
   * @param args the WAV file
   */
  public static void main(String[] args) {
    try (RecordingWriter writer = new RecordingWriter(Path.of(args[0]), PAIRS_PER_SECOND, SCALE)) {
      new BoardRecording(writer).play();
    }
  }

  /** To a window of 95 to 125 A, in which 122 to 125 A is near the limit. */
  private void play() {
    hold(0, OPEN_CIRCUIT_VOLTS, 5);
    hold(110, ARC_VOLTS, 6);
    hold(123.5, ARC_VOLTS, 4);
    hold(140, ARC_VOLTS, 4);
    hold(123.5, ARC_VOLTS, 4);
    hold(110, ARC_VOLTS, 4);
    hold(0, OPEN_CIRCUIT_VOLTS, 10);
  }

  private void hold(double amps, double volts, int seconds) {
    short[] current = new short[PAIRS_PER_SECOND];
    short[] voltage = new short[PAIRS_PER_SECOND];
    for (int second = 0; second < seconds; second++) {
      for (int pair = 0; pair < PAIRS_PER_SECOND; pair++) {
        current[pair] = count(SCALE.current(), amps, NOISE_AMPS);
        voltage[pair] = count(SCALE.voltage(), volts, NOISE_VOLTS);
      }
      writer.write(current, voltage, PAIRS_PER_SECOND);
    }
  }

  private short count(ChannelScale scale, double value, double noise) {
    return (short) Math.round(scale.toCount(value + noise * (2 * random.nextDouble() - 1)));
  }
}
