package org.boothlamp.bench;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.Pipeline;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.SlotBuilder;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Pairs a second through the slots alone and through the whole way from counts to verdict; one
 * operation is one pair, so {@code -prof gc} shows bytes per pair.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PipelineBenchmark implements Pipeline.Listener {

  private static final int BLOCKS = 1_000;
  private static final int PAIRS = BLOCKS * SampleBlock.CAPACITY;

  /** A two-channel 16-bit recording; invented pairs if there is no such file. */
  @Param("../shared/recordings/short-arc-four-runs.wav")
  public String wav;

  private final SampleBlock block = new SampleBlock();
  private BenchPairs pairs;
  private SlotBuilder builder;
  private Pipeline pipeline;
  private int nextBlock;
  private long nextIndex;

  /** Sums of what came out, so that the work cannot be left out. */
  private long shortCircuits;

  private long entries;

  /** Loads the pairs and builds both ways. */
  @Setup
  public void setUp() throws IOException, UnsupportedAudioFileException {
    pairs = BenchPairs.load(wav);
    builder =
        new SlotBuilder(
            BenchPairs.PAIRS_PER_SECOND,
            BenchPairs.SCALE,
            new ShortCircuitRule(8, 9),
            slot -> shortCircuits += slot.sums().shortCircuits());
    PipelineSettings settings =
        new PipelineSettings(BenchPairs.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD);
    SourceFormat format =
        new SourceFormat(
            BenchPairs.PAIRS_PER_SECOND, Short.MIN_VALUE, Short.MAX_VALUE, "benchmark");
    pipeline = new Pipeline(settings, format, this);
    pipeline.assign(new Assignment("T-01", plan()));
  }

  private static JudgingPlan plan() {
    Window amps = new Window(Quantity.AMPS, 132, 152);
    Window volts = new Window(Quantity.VOLTS, 15, 18);
    Pass pass = new Pass("run", List.of(amps, volts), Double.NaN, Double.NaN);
    Procedure procedure =
        new Procedure(
            "B-1",
            "1",
            Process.MAG,
            Polarity.DC_PLUS,
            Characteristic.CONSTANT_VOLTAGE,
            Double.NaN,
            List.of(pass));
    ExpandedUncertainty none = new ExpandedUncertainty(0, 0);
    return new JudgingPlan(procedure, pass, new ChannelUncertainties(none, none, true));
  }

  /** Counts to slots. */
  @Benchmark
  @OperationsPerInvocation(PAIRS)
  public long slots() {
    for (int k = 0; k < BLOCKS; k++) {
      fillNext();
      builder.accept(block.current, block.voltage, block.count, block.firstIndex);
    }
    return shortCircuits;
  }

  /** Counts to verdict. */
  @Benchmark
  @OperationsPerInvocation(PAIRS)
  public long verdict() {
    for (int k = 0; k < BLOCKS; k++) {
      fillNext();
      pipeline.accept(block, block.monotonicNanos / 1_000_000);
    }
    return entries;
  }

  private void fillNext() {
    pairs.fill(block, nextBlock);
    nextBlock = nextBlock + 1 == pairs.blocks() ? 0 : nextBlock + 1;
    block.firstIndex = nextIndex;
    nextIndex += SampleBlock.CAPACITY;
    block.monotonicNanos = nextIndex * (1_000_000_000L / BenchPairs.PAIRS_PER_SECOND);
  }

  @Override
  public void onSignal(Signal signal, long monotonicNanos) {
    entries += signal.code();
  }

  @Override
  public void onEntry(LogEntry entry) {
    entries++;
  }
}
