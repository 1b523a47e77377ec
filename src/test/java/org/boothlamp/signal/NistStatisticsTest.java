package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Mean and standard deviation against the certified values of the NIST StRD univariate summary
 * statistics. A converter delivers whole counts, so each value is written as a count with a scale;
 * what is far away in the data is far away in the zero count.
 */
class NistStatisticsTest {

  private static final ChannelScale UNUSED = new ChannelScale(1, 0);

  /** NIST StRD NumAcc1: 10000001, 10000003, 10000002. */
  @Test
  void shouldHoldNumAcc1() {
    PairScale scale = scale(1, -10_000_000);
    PairSums sums = sums(scale, 1, 3, 2);
    assertEquals(10_000_002, sums.meanAmps(scale), 0);
    assertEquals(1, sums.standardDeviationAmps(scale), 0);
  }

  /** NIST StRD NumAcc2, from memory: 1.2, then 1.1 and 1.3 five hundred times. */
  @Test
  void shouldHoldNumAcc2() {
    PairScale scale = scale(0.1, 0);
    PairSums sums = sums(scale, alternating(12));
    assertEquals(1.2, sums.meanAmps(scale), 1e-15);
    assertEquals(0.1, sums.standardDeviationAmps(scale), 1e-15);
  }

  /** NIST StRD NumAcc3, from memory: 1000000.2, then …0.1 and …0.3 five hundred times. */
  @Test
  void shouldHoldNumAcc3() {
    PairScale scale = scale(0.1, -10_000_000);
    PairSums sums = sums(scale, alternating(2));
    assertEquals(1_000_000.2, sums.meanAmps(scale), 2 * Math.ulp(1e6));
    assertEquals(0.1, sums.standardDeviationAmps(scale), 1e-15);
  }

  /** NIST StRD NumAcc4: 10000000.2, then …0.1 and …0.3 five hundred times. */
  @Test
  void shouldHoldNumAcc4() {
    PairScale scale = scale(0.1, -100_000_000);
    PairSums sums = sums(scale, alternating(2));
    assertEquals(10_000_000.2, sums.meanAmps(scale), 2 * Math.ulp(1e7));
    assertEquals(0.1, sums.standardDeviationAmps(scale), 1e-15);
  }

  /**
   * The same set at the top of the converter: the counts themselves are large beside the spread.
   */
  @Test
  void shouldHoldNumAcc4AtLargeCounts() {
    PairScale scale = scale(0.1, 32_700 - 100_000_000);
    PairSums sums = sums(scale, alternating(32_702));
    assertEquals(10_000_000.2, sums.meanAmps(scale), 2 * Math.ulp(1e7));
    assertEquals(0.1, sums.standardDeviationAmps(scale), 1e-15);
  }

  /** NIST StRD Michelso: the speed of light in air, 10³ km/s, in hundredths. */
  @Test
  void shouldHoldMichelso() {
    PairScale scale = scale(0.01, 0);
    PairSums sums = sums(scale, MICHELSO);
    assertEquals(100, sums.pairs());
    assertEquals(299.8524, sums.meanAmps(scale), 1e-12);
    assertEquals(0.0790105478190518, sums.standardDeviationAmps(scale), 1e-15);
  }

  @Test
  void shouldGiveBothChannelsTheSameStatistics() {
    ChannelScale channel = new ChannelScale(0.01, 0);
    PairScale scale = new PairScale(channel, channel);
    PairSums sums = sums(scale, MICHELSO);
    assertEquals(sums.meanAmps(scale), sums.meanVolts(scale), 0);
    assertEquals(sums.standardDeviationAmps(scale), sums.standardDeviationVolts(scale), 0);
  }

  private static int[] alternating(int middle) {
    return IntStream.range(0, 1_001)
        .map(k -> k == 0 ? middle : middle + (k % 2 == 1 ? -1 : 1))
        .toArray();
  }

  private static PairScale scale(double unitsPerCount, double zeroCount) {
    return new PairScale(new ChannelScale(unitsPerCount, zeroCount), UNUSED);
  }

  private static PairSums sums(PairScale scale, int... counts) {
    short[] channel = new short[counts.length];
    for (int k = 0; k < counts.length; k++) {
      channel[k] = (short) counts[k];
    }
    PairSums sums = new PairSums();
    new PairLoop(1_000, scale, new ShortCircuitRule(8, 9))
        .add(channel, channel, 0, channel.length, sums);
    return sums;
  }

  private static final int[] MICHELSO = {
    29985, 29974, 29990, 30007, 29993, 29985, 29995, 29998, 29998, 29988,
    30000, 29998, 29993, 29965, 29976, 29981, 30000, 30000, 29996, 29996,
    29996, 29994, 29996, 29994, 29988, 29980, 29985, 29988, 29990, 29984,
    29983, 29979, 29981, 29988, 29988, 29983, 29980, 29979, 29976, 29980,
    29988, 29988, 29988, 29986, 29972, 29972, 29962, 29986, 29997, 29995,
    29988, 29991, 29985, 29987, 29984, 29984, 29985, 29984, 29984, 29984,
    29989, 29981, 29981, 29982, 29980, 29977, 29976, 29974, 29975, 29976,
    29991, 29992, 29989, 29986, 29988, 29972, 29984, 29985, 29985, 29978,
    29989, 29984, 29978, 29981, 29976, 29981, 29979, 29981, 29982, 29985,
    29987, 29987, 29981, 29974, 29981, 29994, 29995, 29980, 29981, 29987
  };
}
