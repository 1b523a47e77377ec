package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;

class PairRingTest {

  private static final SourceFormat FORMAT = new SourceFormat(10_000, -2_048, 2_047, "bench");

  private final PairRing ring = new PairRing();
  private final RingMark mark = new RingMark();
  private final SampleBlock block = new SampleBlock();
  private final LogEntry entry = new LogEntry();

  private void put(long firstIndex, int count) {
    RecordingCase.fill(block, PairStream.endless(), firstIndex, count);
    ring.onPairs(block, FORMAT);
  }

  @Test
  void shouldGiveBackWhatWasPutInAlsoAcrossItsEnd() {
    long index = 0;
    for (; index < PairRing.CAPACITY + 5_000; index += 700) {
      put(index, 700);
      ring.release(index);
    }
    short[] current = new short[700];
    short[] voltage = new short[700];
    long across = PairRing.CAPACITY / 700 * 700L;
    ring.release(0);
    ring.copyOut(across, current, voltage, 700);
    RecordingCase.fill(block, PairStream.endless(), across, 700);
    assertArrayEquals(Arrays.copyOf(block.current, 700), current);
    assertArrayEquals(Arrays.copyOf(block.voltage, 700), voltage);
    assertEquals(0, ring.overrunPairs());
  }

  @Test
  void shouldMarkAJumpAndCountWhatFindsNoRoom() {
    long index = 0;
    for (; index + 1_000 <= PairRing.CAPACITY; index += 1_000) {
      put(index, 1_000);
    }
    put(index, 1_000);
    assertEquals(1_000, ring.overrunPairs());
    ring.release(5_000);
    put(index + 1_000, 1_000);
    assertTrue(ring.poll(mark));
    assertEquals(0, mark.index);
    assertTrue(ring.poll(mark));
    assertEquals(index, mark.position);
    assertEquals(index + 1_000, mark.index);
  }

  @Test
  void shouldHaveRoomForSegmentsHoweverOftenPairsJump() {
    for (int k = 0; k < 6_000; k++) {
      put(2L * k, 1);
    }
    assertTrue(ring.overrunPairs() > 0);
    entry.kind = LogEntry.Kind.SEGMENT_STARTED;
    entry.startSeconds = 1.23;
    ring.onEntry(entry);
    RingMark last = new RingMark();
    while (ring.poll(mark)) {
      last.set(mark);
    }
    assertEquals(RingMark.Kind.CONTACT, last.kind);
    assertEquals(123, last.slot);
  }

  /** The recorder's half is left out: it is on a thread of its own. */
  @Test
  void shouldCreateNothingOnTheSamplersThread() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    entry.kind = LogEntry.Kind.SEGMENT_STARTED;
    block.count = 100;
    long least = Long.MAX_VALUE;
    for (int round = 0; round < 5 && least > 0; round++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      for (int k = 0; k < 5_000; k++) {
        block.firstIndex += k % 50 == 0 ? 200 : 100;
        ring.onPairs(block, FORMAT);
        ring.onEntry(entry);
        ring.release(ring.written() - 1_000);
        while (ring.poll(mark)) {
          // taken out, so that there is room
        }
      }
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    assertEquals(0, least);
    assertEquals(0, ring.overrunPairs());
  }
}
