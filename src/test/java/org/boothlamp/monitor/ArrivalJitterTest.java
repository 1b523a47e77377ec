package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pairs that a board sends in frames, that a USB-serial converter hands on when its latency timer
 * says so, and that a host reads when it comes to it: what the lateness of sound blocks is made of.
 * Timers that are nearly but not quite in step make it rise slowly and fall at once.
 */
class ArrivalJitterTest {

  private static final int RATE = 5_000;

  /** Lengths in seconds. */
  private record Way(double frame, double poll, double read) {}

  private final SampleBlock block = new SampleBlock();
  private boolean seenWrong;
  private boolean seenDrift;
  private double wrongAfter = Double.NaN;
  private double driftAfter = Double.NaN;

  /** One board, one line, one host. */
  private final class Play {
    private final RateWatch watch = new RateWatch(RATE);
    private final Random random;
    private final Way way;
    private final double stallsPerSecond;
    private double sent;
    private double now = 40;
    private double stalledUntil;
    private long nextIndex;

    Play(Way way, double stallsPerSecond, int seed) {
      this.way = way;
      this.stallsPerSecond = stallsPerSecond;
      random = new Random(seed);
    }

    void run(double seconds, double factor) {
      double start = now;
      double step = 0.0005;
      while (now < start + seconds) {
        double before = now;
        now += step;
        sent += step * RATE * factor;
        stall(step);
        if (now >= stalledUntil && ticks(before, way.read())) {
          read(start);
        }
      }
    }

    private void stall(double step) {
      if (random.nextDouble() < stallsPerSecond * step) {
        stalledUntil = Math.max(stalledUntil, now + 0.2 * random.nextDouble());
      }
    }

    private boolean ticks(double before, double period) {
      return Math.floor(now / period) > Math.floor(before / period);
    }

    /** What the board had sent when the converter last handed on, in whole frames. */
    private void read(double start) {
      double polledAgo = now - way.poll() * Math.floor(now / way.poll());
      double pairsAFrame = way.frame() * RATE;
      long arrived = (long) (Math.floor((sent - polledAgo * RATE) / pairsAFrame) * pairsAFrame);
      double late = 0.0003 * -Math.log(1 - random.nextDouble());
      while (arrived > nextIndex) {
        block.count = (int) Math.min(SampleBlock.CAPACITY, arrived - nextIndex);
        block.firstIndex = nextIndex;
        nextIndex += block.count;
        block.monotonicNanos = (long) ((now + late) * 1e9);
        watch.accept(block);
        note(now - start);
      }
    }

    private void note(double since) {
      wrongAfter = watch.isWrongRate() && !seenWrong ? since : wrongAfter;
      driftAfter = watch.isDrifting() && !seenDrift ? since : driftAfter;
      seenWrong |= watch.isWrongRate();
      seenDrift |= watch.isDrifting();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.01, 0.016, 0.001, 0",
    "0.0099, 0.01, 0.001, 0",
    "0.02, 0.016, 0.001, 0.2",
    "0.016, 0.0161, 0.001, 0.2",
    "0.02, 0.0199, 0.001, 0.2",
    "0.02, 0.016, 0.016, 1",
    "0.01, 0.001, 0.04, 0",
    "0.01, 0.016, 0.05, 0.2",
    "0.0195, 0.016, 0.02, 0.2",
    "0.01, 0.016, 0.1, 0",
    "0.1, 0.016, 0.001, 0",
    "0.1, 0.016, 0.095, 0",
    "0.1, 0.001, 0.098, 0.2",
    "0.05, 0.016, 0.0495, 0.2",
    "0.05, 0.016, 0.052, 0",
    "0.0025, 0.016, 0.001, 2",
  })
  void shouldBelieveASoundSourceOverAnyLine(
      double frame, double poll, double read, double stallsPerSecond) {
    for (int seed = 0; seed < 3; seed++) {
      new Play(new Way(frame, poll, read), stallsPerSecond, seed).run(300, 1);
    }
    assertFalse(seenWrong, "rate");
    assertFalse(seenDrift, "drift");
  }

  /** Bursts of 100 ms need more of a change. */
  @ParameterizedTest
  @CsvSource({
    "0.01, 0.016, 0.001, 0.93, 0.5",
    "0.01, 0.016, 0.001, 1.07, 0.5",
    "0.01, 0.016, 0.001, 1.3, 0.5",
    "0.02, 0.016, 0.001, 0.9, 0.5",
    "0.01, 0.016, 0.016, 1.1, 0.5",
    "0.01, 0.016, 0.05, 0.8, 0.5",
    "0.01, 0.016, 0.1, 0.5, 0.6",
    "0.1, 0.016, 0.001, 0.7, 2.2",
    "0.1, 0.016, 0.001, 1.2, 2.2",
  })
  void shouldStillFindAWrongRate(
      double frame, double poll, double read, double factor, double mostSeconds) {
    Play play = new Play(new Way(frame, poll, read), 0, 1);
    play.run(10, 1);
    play.run(10, factor);
    assertTrue(wrongAfter <= mostSeconds, wrongAfter + " s");
  }

  @ParameterizedTest
  @CsvSource({
    "0.01, 0.016, 0.001, 0.97, 3",
    "0.02, 0.016, 0.05, 1.03, 9",
    "0.01, 0.016, 0.1, 0.98, 10",
    "0.1, 0.016, 0.001, 1.03, 10",
    "0.02, 0.016, 0.016, 0.993, 35",
  })
  void shouldStillFindADriftOfAClock(
      double frame, double poll, double read, double factor, double mostSeconds) {
    Play play = new Play(new Way(frame, poll, read), 0.2, 1);
    play.run(10, 1);
    play.run(40, factor);
    assertFalse(seenWrong);
    assertTrue(driftAfter <= mostSeconds, driftAfter + " s");
  }
}
