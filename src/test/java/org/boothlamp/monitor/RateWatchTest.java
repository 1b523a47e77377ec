package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RateWatchTest {

  private static final int RATE = 5_000;

  private final RateWatch watch = new RateWatch(RATE);
  private final SampleBlock block = new SampleBlock();
  private final Random random = new Random(3);
  private double sentPairs;
  private long nextIndex;
  private double seconds = 77;
  private boolean seenWrong;
  private boolean seenDrift;
  private double wrongAfter = Double.NaN;
  private double driftAfter = Double.NaN;

  /** Blocks arrive every so often, each late by chance, of a source whose clock is off. */
  private void play(double length, double everySeconds, double latestSeconds, double rateFactor) {
    double end = seconds + length;
    double start = seconds;
    while (seconds < end) {
      seconds += everySeconds;
      sentPairs += everySeconds * RATE * rateFactor;
      block.count = (int) (sentPairs - nextIndex);
      block.firstIndex = nextIndex;
      nextIndex += block.count;
      block.monotonicNanos = (long) ((seconds + latestSeconds * random.nextDouble()) * 1e9);
      watch.accept(block);
      note(seconds - start);
    }
  }

  private void note(double since) {
    wrongAfter = watch.isWrongRate() && !seenWrong ? since : wrongAfter;
    driftAfter = watch.isDrifting() && !seenDrift ? since : driftAfter;
    seenWrong |= watch.isWrongRate();
    seenDrift |= watch.isDrifting();
  }

  @ParameterizedTest
  @CsvSource({"0.01, 0", "0.02, 0.015", "0.001, 0.016", "0.016, 0.004", "0.04, 0.015"})
  void shouldBelieveASourceThatKeepsTimeThoughItsBlocksAreLate(double every, double latest) {
    play(120, every, latest, 1);
    assertFalse(seenWrong || seenDrift);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 0.8, 0.92, 0.94, 1.06, 1.08, 1.25, 2, 10})
  void shouldFindAWrongRateInHalfASecond(double factor) {
    play(5, 0.01, 0.002, 1);
    assertFalse(seenWrong);
    double onset = seconds;
    play(5, 0.01, 0.002, factor);
    assertTrue(wrongAfter <= 0.5, wrongAfter + " s");
    assertTrue(watch.sinceNanos() / 1e9 <= onset + 0.1, "begins after the onset");
    assertTrue(watch.sinceNanos() / 1e9 >= onset - 0.25, "begins before the onset");
    play(2, 0.01, 0.002, 1);
    assertFalse(watch.isWrongRate(), "the rate is right again");
    play(60, 0.01, 0.002, 1);
    assertFalse(seenDrift, "the wrong rate is no drift");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.97, 1.03})
  void shouldNotCallASmallerErrorAWrongRate(double factor) {
    play(10, 0.01, 0.002, factor);
    assertFalse(seenWrong);
  }

  /** The larger the sooner; the last column is what the class promises. */
  @ParameterizedTest
  @CsvSource({
    "0.038, 2.2",
    "0.03, 2.2",
    "0.022, 2.2",
    "0.018, 9",
    "0.012, 9",
    "0.009, 33",
    "0.006, 33"
  })
  void shouldFindADriftingClockTheSoonerTheFasterItRuns(double share, double mostSeconds) {
    for (int sign = -1; sign <= 1; sign += 2) {
      RateWatchTest one = new RateWatchTest();
      one.play(70, 0.01, 0.005, 1);
      assertFalse(one.seenDrift);
      one.play(60, 0.01, 0.005, 1 + sign * share);
      assertFalse(one.seenWrong);
      assertTrue(one.driftAfter <= mostSeconds, sign * share + ": " + one.driftAfter + " s");
      assertTrue(one.watch.isDrifting());
      one.play(60, 0.01, 0.005, 1);
      assertFalse(one.watch.isDrifting(), "the clock is right again");
    }
  }

  /** The same at once after the start, with nothing to compare with. */
  @ParameterizedTest
  @CsvSource({"0.9, 0.5", "1.1, 0.5", "0.97, 2.2", "1.03, 2.2", "0.985, 9", "0.993, 33"})
  void shouldFindItFromTheStartToo(double factor, double mostSeconds) {
    play(60, 0.01, 0.005, factor);
    double after = Math.abs(factor - 1) > 0.05 ? wrongAfter : driftAfter;
    assertTrue(after <= mostSeconds, after + " s");
  }

  @Test
  void shouldSayHowSmallADriftItCouldTell() {
    double[] lengths = {0.3, 0.3, 1.6, 7, 25};
    double[] tellable = {Double.NaN, 0.05, 0.02, 0.01, 0.005};
    for (int k = 0; k < lengths.length; k++) {
      play(lengths[k], 0.01, 0.002, 1);
      assertEquals(tellable[k], watch.tellableShare(), 0);
    }
  }

  @Test
  void shouldTakeABreakForNoCure() {
    play(10, 0.01, 0.002, 0.97);
    assertTrue(watch.isDrifting());
    seconds += 3;
    sentPairs += 3 * RATE * 0.97;
    play(20, 0.01, 0.002, 0.97);
    assertTrue(watch.isDrifting());
    seconds += 3;
    sentPairs += 3 * RATE;
    play(40, 0.01, 0.002, 1);
    assertFalse(watch.isDrifting());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.997, 1.003})
  void shouldBearAClockWithoutACrystal(double factor) {
    play(100, 0.01, 0.005, factor);
    assertFalse(seenWrong || seenDrift);
  }

  /** The host was busy: nothing was read, and then everything at once. */
  @ParameterizedTest
  @ValueSource(doubles = {0.06, 0.12, 0.2, 0.24, 0.5, 3})
  void shouldBearAStallOfTheReader(double stall) {
    for (int k = 0; k < 20; k++) {
      play(1.7, 0.01, 0.002, 1);
      seconds += stall;
      sentPairs += stall * RATE;
      while (sentPairs - nextIndex > SampleBlock.CAPACITY) {
        block.firstIndex = nextIndex;
        block.count = SampleBlock.CAPACITY;
        nextIndex += block.count;
        block.monotonicNanos = (long) (seconds * 1e9);
        watch.accept(block);
        note(0);
      }
    }
    assertFalse(seenWrong || seenDrift);
  }

  /** After a reconnect the index may go on as if no time had passed. */
  @ParameterizedTest
  @ValueSource(doubles = {0.03, 0.1, 0.2, 0.9})
  void shouldBearAStepOfTheIndex(double lost) {
    for (int k = 0; k < 40; k++) {
      play(3, 0.01, 0.002, 1);
      seconds += lost;
    }
    assertFalse(seenWrong);
    assertEquals(lost < 0.05, seenDrift, "many small steps are a drift");
  }

  @Test
  void shouldFindNothingWhereTimeIsCountedFromThePairs() {
    for (int k = 0; k < 1_000; k++) {
      block.firstIndex = 1_000L * k;
      block.count = 1_000;
      block.monotonicNanos = (k + 1) * 200_000_000L;
      watch.accept(block);
      note(0);
    }
    assertFalse(seenWrong || seenDrift);
  }
}
