package org.boothlamp.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * What every {@link SampleSource} keeps. A subclass opens its source; what must happen so that the
 * next read can bring pairs (a clock turned, bytes sent) it does in {@link #beforeRead}. The source
 * must be good for {@link #READS} reads that bring pairs.
 */
public abstract class SampleSourceContract {

  /** Reads with pairs that a test makes at most. */
  protected static final int READS = 400;

  private static final int MOST_READS_WITHOUT_PAIRS = 10_000;

  /** The one block of each test. */
  protected final SampleBlock block = new SampleBlock();

  private SampleSource source;

  /** A fresh source, at its first pair; closed by the contract. */
  protected abstract SampleSource open() throws Exception;

  /** Called before every read that should bring pairs. */
  protected void beforeRead() throws Exception {}

  /** The source of this test. */
  protected final SampleSource source() throws Exception {
    if (source == null) {
      source = open();
    }
    return source;
  }

  /** Reads until there are pairs. */
  protected final void readPairs() throws Exception {
    SampleSource opened = source();
    for (int i = 0; i < MOST_READS_WITHOUT_PAIRS; i++) {
      beforeRead();
      Outcome outcome = opened.read(block);
      assertNotEquals(Outcome.END, outcome, "the source ended before the test did");
      if (outcome == Outcome.PAIRS) {
        return;
      }
      assertEquals(0, block.count);
    }
    throw new AssertionError("no pairs in " + MOST_READS_WITHOUT_PAIRS + " reads");
  }

  @AfterEach
  void closeSource() throws Exception {
    source().close();
  }

  @Test
  void shouldCountPairsFromZeroWithoutGoingBack() throws Exception {
    readPairs();
    assertEquals(0, block.firstIndex);
    for (int i = 1; i < READS / 4; i++) {
      long nextIndex = block.firstIndex + block.count;
      readPairs();
      assertTrue(block.firstIndex >= nextIndex, () -> "went back to " + block.firstIndex);
    }
  }

  @Test
  void shouldFillBlocksWithinTheirBounds() throws Exception {
    for (int i = 0; i < READS / 4; i++) {
      readPairs();
      assertTrue(block.count >= 1 && block.count <= SampleBlock.CAPACITY, () -> "" + block.count);
    }
  }

  @Test
  void shouldKnowItsFormatAsSoonAsThereArePairs() throws Exception {
    readPairs();
    assertNotNull(source().format());
    assertNotNull(source().counters());
  }

  @Test
  void shouldKeepTheSameFormatObjectWhileNothingChanges() throws Exception {
    readPairs();
    Object format = source().format();
    readPairs();
    assertTrue(format == source().format());
  }

  @Test
  void shouldNeverTurnTheTimeBack() throws Exception {
    readPairs();
    for (int i = 1; i < READS / 4; i++) {
      long before = block.monotonicNanos;
      readPairs();
      assertTrue(block.monotonicNanos - before >= 0);
    }
  }

  /** A busy machine can only make a wait longer, so the shortest of several counts. */
  @Test
  void shouldWaitAtMostFiftyMillisForPairs() throws Exception {
    readPairs();
    long shortestNanos = Long.MAX_VALUE;
    for (int i = 0; i < 5; i++) {
      long start = System.nanoTime();
      source().read(block);
      shortestNanos = Math.min(shortestNanos, System.nanoTime() - start);
    }
    assertTrue(shortestNanos <= SampleSource.LONGEST_WAIT_NANOS, "waited " + shortestNanos + " ns");
  }

  @Test
  void shouldBearBeingClosedTwiceAndBringNothingAfterwards() throws Exception {
    readPairs();
    source().close();
    source().close();
    assertNotEquals(Outcome.PAIRS, source().read(block));
    assertEquals(0, block.count);
  }

  /** The machine may link or load something late, once; so the leanest of four spells counts. */
  @Test
  void shouldCreateNoObjectsOncePairsFlow() throws Exception {
    for (int i = 0; i < READS / 2; i++) {
      readPairs();
    }
    long leastBytes = Long.MAX_VALUE;
    for (int spell = 0; spell < 4; spell++) {
      leastBytes = Math.min(leastBytes, allocatedBy(READS / 8));
    }
    assertEquals(0, leastBytes);
  }

  private long allocatedBy(int reads) throws Exception {
    long bytes = 0;
    for (int i = 0; i < reads; i++) {
      beforeRead();
      bytes += allocatedByOneRead();
    }
    return bytes;
  }

  private long allocatedByOneRead() throws Exception {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    SampleSource opened = source();
    long before = threads.getCurrentThreadAllocatedBytes();
    opened.read(block);
    return threads.getCurrentThreadAllocatedBytes() - before;
  }
}
