package org.boothlamp.acquisition;

import java.util.concurrent.TimeUnit;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SourceFormat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What raw recordings cost the sampler, a pair; the recorder's half is on a thread of its own. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PairRingBenchmark {

  private static final int PAIRS = 1_000_000;

  /** Pairs in a block: a front end's frames bring up to 100. */
  @Param({"100", "1000"})
  public int blockPairs;

  private final PairRing ring = new PairRing();
  private final SampleBlock block = new SampleBlock();
  private final SourceFormat format = new SourceFormat(10_000, -2_048, 2_047, "benchmark");

  /** Pairs into the ring, and their room given back. */
  @Benchmark
  @OperationsPerInvocation(PAIRS)
  public long tap() {
    for (int pairs = 0; pairs < PAIRS; pairs += blockPairs) {
      block.firstIndex += block.count;
      block.count = blockPairs;
      ring.onPairs(block, format);
      ring.release(ring.written());
    }
    return ring.written();
  }
}
