package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.concurrent.CompletableFuture;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.Test;

class LogQueueTest {

  private final LogQueue queue = new LogQueue(3);
  private final LogEntry entry = new LogEntry();
  private final LogEntry into = new LogEntry();

  private boolean offer(long number) {
    entry.count = number;
    return queue.offer(entry);
  }

  private long poll() {
    assertTrue(queue.poll(into));
    return into.count;
  }

  @Test
  void shouldHandEntriesOutInTheOrderTheyCameIn() {
    for (int round = 0; round < 10; round++) {
      assertTrue(offer(2 * round));
      assertTrue(offer(2 * round + 1));
      assertEquals(2 * round, poll());
      assertEquals(2 * round + 1, poll());
    }
    assertEquals(0, queue.size());
  }

  @Test
  void shouldKeepCopyWhenEntryIsFilledAgain() {
    queue.offer(LogEntries.ended(7, 30, SegmentEnd.GAP));
    offer(5);

    assertTrue(queue.poll(into));
    assertEquals(LogEntry.Kind.SEGMENT_ENDED, into.kind);
    assertEquals(30, into.figures.lengthSeconds);
    assertEquals(5, poll());
  }

  @Test
  void shouldRefuseAndCountWhenFull() {
    assertTrue(offer(1));
    assertTrue(offer(2));
    assertTrue(offer(3));
    assertFalse(offer(4));
    assertFalse(offer(5));

    assertEquals(2, queue.lostEntries());
    assertEquals(3, queue.size());
    assertEquals(1, poll());
    assertTrue(offer(6));
    assertEquals(2, poll());
    assertEquals(3, poll());
    assertEquals(6, poll());
  }

  @Test
  void shouldLeaveEntryAsItWasWhenEmpty() {
    into.count = 17;
    assertFalse(queue.poll(into));
    assertEquals(17, into.count);
  }

  @Test
  void shouldRefuseToHoldNothing() {
    assertThrows(IllegalArgumentException.class, () -> new LogQueue(0));
  }

  @Test
  void shouldPassEveryEntryOnceAndInOrderBetweenTwoThreads() {
    LogQueue shared = new LogQueue(64);
    long many = 300_000;
    CompletableFuture<Long> refusals = CompletableFuture.supplyAsync(() -> offerAll(shared, many));

    for (long expected = 0; expected < many; ) {
      if (shared.poll(into)) {
        assertEquals(expected, into.count);
        assertEquals(expected, into.figures.shortCircuits);
        expected++;
      } else {
        Thread.onSpinWait();
      }
    }
    assertEquals(refusals.join(), shared.lostEntries());
    assertEquals(0, shared.size());
  }

  /** Offers each entry until it is taken; answers how often it was not. */
  private static long offerAll(LogQueue shared, long many) {
    LogEntry own = new LogEntry();
    long refusals = 0;
    for (long number = 0; number < many; ) {
      own.count = number;
      own.figures.shortCircuits = number;
      if (shared.offer(own)) {
        number++;
      } else {
        refusals++;
        Thread.onSpinWait();
      }
    }
    return refusals;
  }

  @Test
  void shouldCreateNoObjectsOnceItRuns() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long self = Thread.currentThread().getId();
    offerAndPoll(10_000);
    // The question itself may cost a few bytes.
    long before = threads.getThreadAllocatedBytes(self);
    offerAndPoll(100_000);
    long allocated = threads.getThreadAllocatedBytes(self) - before;

    assertTrue(allocated < 1_000, "allocated " + allocated + " bytes for 100,000 entries");
  }

  private void offerAndPoll(int times) {
    for (int i = 0; i < times; i++) {
      queue.offer(entry);
      if (i % 2 == 0) {
        queue.poll(into);
      }
    }
  }
}
