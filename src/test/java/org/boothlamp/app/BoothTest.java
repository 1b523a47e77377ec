package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.lamp.LampOutput;
import org.boothlamp.lamp.LampPattern;
import org.boothlamp.lamp.RedStyle;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.ScriptedSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Start and end of a booth's parts. */
class BoothTest {

  @TempDir Path folder;

  private final List<String> closed = Collections.synchronizedList(new ArrayList<>());

  private Booth booth(SampleSource source, LampOutput output) {
    return booth(source, output, null);
  }

  private Booth booth(SampleSource source, LampOutput output, Worker sync) {
    return booth(source, output, sync, null);
  }

  private Booth booth(SampleSource source, LampOutput output, Worker sync, Worker badge) {
    BoothLog log = BoothLog.open(folder.resolve(BoothLog.FILE_NAME));
    LogQueue queue = new LogQueue();
    RefreshedLamp lamp =
        new RefreshedLamp(List.of(output), new LampPattern(RedStyle.STEADY), NanoClock.SYSTEM);
    Monitor monitor =
        new Monitor(
            source,
            lamp,
            queue,
            WallClock.SYSTEM,
            new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
            Assignment.NONE);
    BoothLogWriter writer =
        new BoothLogWriter(log, "B-07", queue, LogClocks.system(), signIn -> {});
    return new Booth(source, lamp, monitor, writer, null, WallClock.SYSTEM, sync, badge);
  }

  private List<String> eventsInLog() {
    try (BoothLogReader reader = BoothLogReader.open(folder.resolve(BoothLog.FILE_NAME))) {
      return reader.read(0, Long.MAX_VALUE).events().stream().map(event -> event.what()).toList();
    }
  }

  @Test
  void shouldEndByItselfWithItsSourceAndCloseTheLampBeforeTheSource() throws Exception {
    SampleSource source =
        new ClosingSource(new ScriptedSource(5000).pairs(PairScript.at(5000).idle(1), 50));
    try (Booth booth = booth(source, new ClosingOutput())) {
      booth.start();
      booth.awaitEnd();
      assertFalse(booth.isRunning());
      assertNull(booth.failure());
    }
    assertEquals(List.of("lamp", "source"), closed);
    assertEquals(List.of("started", "stopped"), eventsInLog());
  }

  @Test
  void shouldEndAsAWholeIfTheSamplerFailsAndSayWhy() throws Exception {
    IllegalStateException broken = new IllegalStateException("broken source");
    SampleSource source =
        new ClosingSource(new ScriptedSource(5000)) {
          @Override
          public Outcome read(SampleBlock block) {
            throw broken;
          }
        };
    try (Booth booth = booth(source, new ClosingOutput())) {
      booth.start();
      booth.awaitEnd();
      assertSame(broken, booth.failure());
    }
    assertEquals(List.of("lamp", "source"), closed);
  }

  @Test
  void shouldCloseTheOthersEvenIfOnePartFailsToClose() throws Exception {
    SampleSource source =
        new ClosingSource(new ScriptedSource(5000)) {
          @Override
          public void close() {
            super.close();
            throw new IllegalStateException("does not close");
          }
        };
    Booth booth = booth(source, new ClosingOutput());
    booth.start();
    booth.close();
    booth.close();
    assertEquals(List.of("lamp", "source"), closed);
    assertTrue(eventsInLog().contains("stopped"));
  }

  @Test
  void shouldGiveTheLogBackIfItIsClosedWithoutAStart() {
    booth(new ClosingSource(new ScriptedSource(5000)), new ClosingOutput()).close();
    BoothLog again = BoothLog.open(folder.resolve(BoothLog.FILE_NAME));
    assertNotNull(again.path());
    again.close();
  }

  @Test
  void shouldGoOnWhenSyncFails() throws Exception {
    CountDownLatch failed = new CountDownLatch(1);
    ScriptedSource pairs = new ScriptedSource(5000).pairs(PairScript.at(5000).idle(1), 50);
    SampleSource source =
        new ClosingSource(pairs) {
          @Override
          public Outcome read(SampleBlock block) {
            awaitQuietly(failed);
            return super.read(block);
          }
        };
    Worker sync =
        new SyncDouble() {
          @Override
          public boolean step() {
            failed.countDown();
            throw new IllegalStateException("broken sync");
          }
        };
    try (Booth booth = booth(source, new ClosingOutput(), sync)) {
      booth.start();
      booth.awaitEnd();
      assertNull(booth.failure());
    }
    assertEquals(List.of("started", "stopped"), eventsInLog());
  }

  @Test
  void shouldGoOnWhenTheBadgeReaderFailsAndSaySo() throws Exception {
    CountDownLatch failed = new CountDownLatch(1);
    ScriptedSource pairs = new ScriptedSource(5000).pairs(PairScript.at(5000).idle(1), 50);
    SampleSource source =
        new ClosingSource(pairs) {
          @Override
          public Outcome read(SampleBlock block) {
            awaitQuietly(failed);
            return super.read(block);
          }
        };
    Worker badge =
        new SyncDouble() {
          @Override
          public boolean step() {
            throw new IllegalStateException("broken reader");
          }

          @Override
          public void close() {
            failed.countDown();
          }
        };
    try (Booth booth = booth(source, new ClosingOutput(), null, badge)) {
      booth.start();
      booth.awaitEnd();
      assertNull(booth.failure());
    }
    assertEquals(List.of("started", "badge reader lost", "stopped"), eventsInLog());
  }

  @Test
  void shouldCloseLampSourceAndLogWhileSyncStillWaitsForTheNetwork() throws Exception {
    CountDownLatch answer = new CountDownLatch(1);
    List<String> events = new ArrayList<>();
    Worker sync =
        new SyncDouble() {
          @Override
          public boolean step() {
            awaitQuietly(answer);
            return true;
          }
        };
    Booth booth = booth(new ClosingSource(new ScriptedSource(5000)), new ClosingOutput(), sync);
    booth.start();
    Thread closing = new Thread(booth::close);
    closing.start();
    while (!events.contains("stopped")) {
      events.clear();
      events.addAll(eventsInLog());
    }
    assertEquals(List.of("lamp", "source"), closed);
    answer.countDown();
    closing.join();
    assertEquals(List.of("lamp", "source", "sync"), closed);
  }

  private static void awaitQuietly(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** A sync that tells when it is closed. */
  private abstract class SyncDouble implements Worker {

    @Override
    public String roleName() {
      return "sync";
    }

    @Override
    public void close() {
      closed.add("sync");
    }
  }

  /** A source that tells when it is closed. */
  private class ClosingSource implements SampleSource {

    private final SampleSource source;

    ClosingSource(SampleSource source) {
      this.source = source;
    }

    @Override
    public Outcome read(SampleBlock block) {
      return source.read(block);
    }

    @Override
    public SourceFormat format() {
      return source.format();
    }

    @Override
    public SourceCounters counters() {
      return source.counters();
    }

    @Override
    public void close() {
      closed.add("source");
    }
  }

  /** An output that tells when it is closed. */
  private final class ClosingOutput implements LampOutput {

    @Override
    public String name() {
      return "closing output";
    }

    @Override
    public void apply(Signal signal, int lights, long samplesNanos) {
      // shown nowhere
    }

    @Override
    public void close() {
      closed.add("lamp");
    }
  }
}
