package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.Pipeline;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;

/** Sends pairs of a test through a pipeline and keeps what comes out; time counts from pair 0. */
public final class PipelineRun implements Pipeline.Listener {

  /** The lamp's signal from a moment on. */
  public record Shown(Signal signal, double seconds) {}

  private final EntryCollector entries = new EntryCollector();
  private final List<Shown> shown = new ArrayList<>();
  private final SampleBlock block = new SampleBlock();
  private final int pairsPerSecond;
  private final Pipeline pipeline;

  /** A run against a plan, which may be null, with the standard rules and all 16 bits. */
  public PipelineRun(PairScale scale, int pairsPerSecond, JudgingPlan plan) {
    this(scale, new SourceFormat(pairsPerSecond, Short.MIN_VALUE, Short.MAX_VALUE, "test"), plan);
  }

  /** A run of pairs from a converter of another range. */
  public PipelineRun(PairScale scale, SourceFormat format, JudgingPlan plan) {
    pairsPerSecond = format.pairsPerSecond();
    PipelineSettings settings = new PipelineSettings(scale, ArcRule.STANDARD, JudgingRule.STANDARD);
    pipeline = new Pipeline(settings, format, this);
    pipeline.assign(new Assignment("T-01", plan));
  }

  /** A whole recording against its own procedure. */
  public static PipelineRun of(KnownRecording recording) {
    PipelineRun run =
        new PipelineRun(recording.scale(), recording.pairsPerSecond(), recording.plan());
    run.send(recording.current(), recording.voltage(), 0);
    run.pipeline.close(SegmentEnd.STOPPED);
    return run;
  }

  /** Sends pairs of which the first has this index. */
  public void send(short[] current, short[] voltage, long firstIndex) {
    for (int from = 0; from < current.length; from += SampleBlock.CAPACITY) {
      block.count = Math.min(SampleBlock.CAPACITY, current.length - from);
      System.arraycopy(current, from, block.current, 0, block.count);
      System.arraycopy(voltage, from, block.voltage, 0, block.count);
      block.firstIndex = firstIndex + from;
      block.monotonicNanos = (block.firstIndex + block.count) * 1_000_000_000L / pairsPerSecond;
      pipeline.accept(block, block.monotonicNanos / 1_000_000);
    }
  }

  @Override
  public void onSignal(Signal signal, long monotonicNanos) {
    shown.add(new Shown(signal, monotonicNanos / 1e9));
  }

  @Override
  public void onEntry(LogEntry entry) {
    entries.offer(entry);
  }

  /** The pipeline itself. */
  public Pipeline pipeline() {
    return pipeline;
  }

  /** What it told the log. */
  public EntryCollector entries() {
    return entries;
  }

  /** Changes of the signal, in order. */
  public List<Shown> shown() {
    return shown;
  }
}
