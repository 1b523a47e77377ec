package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.Test;

/** Once pairs flow, the way from the source to the lamp and the queue creates nothing. */
class AllocationTest {

  private static final int RATE = 5_000;
  private static final long PAIRS = 1_500_000;
  private static final int ROUNDS = 5;
  private static final JudgingPlan PLAN =
      Plans.of(
          Polarity.DC_PLUS,
          Plans.amps(95, 125),
          Plans.volts(15, 26),
          new Window(Quantity.POWER_W, 1_500, 3_000),
          new Window(Quantity.SHORTS_PER_S, 0, 100));
  private static final PipelineSettings SETTINGS =
      new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD);

  /** Touches, shorts, excursions, an arc-out, the wrong polarity: every branch, round and round. */
  private static final PairScript.Part STORY = story();

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private static PairScript.Part story() {
    PairScript script = PairScript.at(RATE).idle(1).arc(180, 2, 0.05).idle(0.5).arc(180, 2, 0.7);
    script.idle(0.4).arc(110, 23, 2).off(0.2);
    for (int k = 0; k < 40; k++) {
      script.arc(100, 23, 0.021).arc(200, 3, 0.004);
    }
    script.arc(150, 23, 2).arc(110, 23, 1).idle(1).arc(-110, -23, 2).idle(1).square(110, 20, 50, 2);
    return script.idle(1).parts().get(0);
  }

  /** Goes round the story for ever; every eighth block of pairs is preceded by a vain read. */
  private static final class Looping implements SampleSource {
    private final SourceFormat format = new SourceFormat(RATE, -32_768, 32_767, "loop");
    private final SourceCounters counters = new SourceCounters();
    private int at;
    private long index;
    private long reads;

    @Override
    public Outcome read(SampleBlock block) {
      block.monotonicNanos = index * 200_000L;
      if (reads++ % 8 == 0) {
        return Outcome.NOTHING;
      }
      if (reads % 1_000 == 0) {
        counters.badFrames++;
        index += 50;
      }
      int count = Math.min(100, STORY.current().length - at);
      System.arraycopy(STORY.current(), at, block.current, 0, count);
      System.arraycopy(STORY.voltage(), at, block.voltage, 0, count);
      block.count = count;
      block.firstIndex = index;
      index += count;
      at = at + count == STORY.current().length ? 0 : at + count;
      block.monotonicNanos = index * 200_000L;
      return Outcome.PAIRS;
    }

    @Override
    public SourceFormat format() {
      return format;
    }

    @Override
    public SourceCounters counters() {
      return counters;
    }

    @Override
    public void close() {
      at = 0;
    }
  }

  private static final class CountingLamp implements Lamp {
    private long changes;
    private Signal last = Signal.DARK;

    @Override
    public void show(Signal signal, long monotonicNanos) {
      changes += signal == last ? 0 : 1;
      last = signal;
    }

    @Override
    public void close() {
      last = Signal.DARK;
    }
  }

  private static final class CountingSink implements BoothLogSink, Pipeline.Listener {
    private final LogEntry copy = new LogEntry();
    private long segments;
    private long touches;
    private long excursions;
    private long events;

    @Override
    public boolean offer(LogEntry entry) {
      copy.set(entry);
      segments += entry.kind == LogEntry.Kind.SEGMENT_ENDED ? 1 : 0;
      touches += entry.kind == LogEntry.Kind.TOUCH ? 1 : 0;
      excursions += entry.kind == LogEntry.Kind.EXCURSION ? 1 : 0;
      events += entry.kind == LogEntry.Kind.EVENT_ENDED ? 1 : 0;
      return true;
    }

    @Override
    public void onSignal(Signal signal, long monotonicNanos) {
      copy.signalCode = (byte) signal.code();
    }

    @Override
    public void onEntry(LogEntry entry) {
      offer(entry);
    }
  }

  /**
   * Least bytes of several rounds: what is created per pair, slot or segment is created in every
   * one, while the virtual machine may load a class or two in the first.
   */
  private long leastBytes(Runnable round) {
    long least = Long.MAX_VALUE;
    for (int k = 0; k < ROUNDS && least > 0; k++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      round.run();
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    return least;
  }

  @Test
  void shouldCreateNothingInThePipeline() {
    CountingSink sink = new CountingSink();
    Pipeline pipeline = new Pipeline(SETTINGS, new Looping().format(), sink);
    pipeline.assign(new Assignment("T-01", PLAN));
    Looping source = new Looping();
    SampleBlock block = new SampleBlock();
    Runnable round =
        () -> {
          long end = source.index + PAIRS;
          while (source.index < end) {
            if (source.read(block) == SampleSource.Outcome.PAIRS) {
              pipeline.accept(block, 0);
            }
          }
        };
    round.run();
    assertEquals(0, leastBytes(round));
    assertTrue(sink.segments > 50 && sink.touches > 50 && sink.excursions > 20);
  }

  @Test
  void shouldCreateNothingInAStepOfTheMonitor() {
    CountingSink sink = new CountingSink();
    CountingLamp lamp = new CountingLamp();
    Looping source = new Looping();
    Monitor monitor =
        new Monitor(source, lamp, sink, () -> 0, SETTINGS, new Assignment("T-01", PLAN));
    Runnable round =
        () -> {
          long end = source.index + PAIRS;
          while (source.index < end) {
            monitor.step();
          }
        };
    round.run();
    assertEquals(0, leastBytes(round));
    assertTrue(sink.segments > 50 && sink.events > 20 && lamp.changes > 200);
  }
}
