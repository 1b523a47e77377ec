package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.ScriptedSource;
import org.junit.jupiter.api.Test;

/** A time of day that runs as fast as the samples. */
class SourceTimeTest {

  @Test
  void shouldRunWithTheSamples() {
    ScriptedSource source = new ScriptedSource(5000).pairs(PairScript.at(5000).idle(2), 50);
    SourceTime time = new SourceTime(source, 1_000_000);
    assertEquals(1_000_000, time.epochMillis());
    SampleBlock block = new SampleBlock();
    time.read(block);
    long first = time.epochMillis();
    while (time.read(block) != Outcome.END) {
      assertEquals(1_000_000 + block.monotonicNanos / 1_000_000, time.epochMillis());
    }
    // 2 s of samples less the first block of 10 ms
    assertEquals(first + 1_990, time.epochMillis());
    assertSame(source.format(), time.format());
    assertSame(source.counters(), time.counters());
  }
}
