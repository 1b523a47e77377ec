package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class StampIndexTest {

  private static final long PERIOD_NANOS = 1_000_000;
  private static final long BOOT_NANOS = 77_000_000_000L;

  private final StampIndex index = new StampIndex(1_000);

  private long place(double periods) {
    long nanos = Math.round(periods * PERIOD_NANOS);
    return index.place(BOOT_NANOS + nanos, nanos);
  }

  @Test
  void shouldCountFromZeroAtWhateverTimeItStarts() {
    for (int pair = 0; pair < 1_000; pair++) {
      assertEquals(pair, place(pair));
    }
    assertEquals(0, index.lostPairs());
    assertEquals(0, index.deviationNanos());
  }

  @Test
  void shouldFollowATriggerThatRunsTwoPercentFastOrSlow() {
    for (int pair = 0; pair < 10_000; pair++) {
      assertEquals(pair, place(pair * 1.02));
    }
    StampIndex fast = new StampIndex(1_000);
    for (int pair = 0; pair < 10_000; pair++) {
      assertEquals(pair, fast.place(pair * 980_000L, pair * 980_000L));
    }
  }

  @Test
  void shouldBearStampsThatJitterByAThirdOfAPeriod() {
    SplittableRandom random = new SplittableRandom(1);
    for (int pair = 0; pair < 100_000; pair++) {
      assertEquals(pair, place(pair + 0.33 * (2 * random.nextDouble() - 1)));
    }
    assertEquals(0, index.lostPairs());
  }

  @Test
  void shouldSeeEveryGapAtItsLength() {
    place(0);
    assertEquals(1, place(1));
    assertEquals(3, place(3));
    assertEquals(104, place(104.2));
    assertEquals(105, place(105));
    assertEquals(101, index.lostPairs());
  }

  @Test
  void shouldNotTakeAClockThatWasSetForAGap() {
    place(0);
    place(1);
    assertEquals(2, index.place(BOOT_NANOS + 3_600_000_000_000L, 2 * PERIOD_NANOS));
    assertEquals(3, index.place(BOOT_NANOS + 3_600_001_000_000L, 3 * PERIOD_NANOS));
    assertEquals(4, index.place(BOOT_NANOS - 3_600_000_000_000L, 4 * PERIOD_NANOS));
    assertEquals(0, index.lostPairs());
  }

  @Test
  void shouldGoOnByTheHostsClockAfterAnOutage() {
    place(0);
    place(1);
    index.interrupt();
    assertEquals(2_001, index.place(5, 2_001 * PERIOD_NANOS));
    assertEquals(2_002, index.place(5 + PERIOD_NANOS, 2_002 * PERIOD_NANOS));
    assertEquals(0, index.lostPairs(), "an outage is no pair lost on the way");
  }
}
