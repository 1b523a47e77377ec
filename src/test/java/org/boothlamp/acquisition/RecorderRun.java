package org.boothlamp.acquisition;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.HandTurnedClock;

/**
 * A monitor with a recorder beside it, both stepped by hand: the recorder after each block of the
 * source unless it is told to stall.
 */
final class RecorderRun {

  /** What the recorder told the log. */
  record Told(EventKind kind, String detail) {}

  static final String MACHINE_BOOT = "1f0c9ad2-5c1e-4f0a-9d52-7b1f60a1c2e3";
  static final RecordingLimits ROOMY = new RecordingLimits(1_000_000_000L, 0, 0);

  final EntryCollector live = new EntryCollector();
  final List<Told> told = new ArrayList<>();
  final HandTurnedClock clock = new HandTurnedClock();
  final RecordingFolder folder;
  final SegmentRecorder recorder;
  private final PairRing ring = new PairRing();
  private final Assignment assignment;
  private Monitor monitor;
  private long sourceNanos;
  private boolean stalled;

  RecorderRun(Path path, RecordingLimits limits, Assignment assignment) {
    this.assignment = assignment;
    folder = new RecordingFolder(path, limits, this::wallMillis);
    recorder =
        new SegmentRecorder(
            ring,
            folder,
            "B-07",
            MACHINE_BOOT,
            clock,
            (kind, detail) -> told.add(new Told(kind, detail)),
            () -> {});
    recorder.start();
  }

  private long wallMillis() {
    return sourceNanos / 1_000_000;
  }

  /** Plays a source to its end. */
  RecorderRun play(SampleSource source, PairScale scale) {
    monitor =
        new Monitor(
            new Timed(source), new NoLamp(), live, this::wallMillis, settings(scale), assignment);
    monitor.setTap(ring);
    while (monitor.step()) {
      if (!stalled) {
        recorder.work();
      }
    }
    monitor.close();
    recorder.work();
    return this;
  }

  /** From now on the recorder does not get on, or does again. */
  void stall(boolean isStalled) {
    stalled = isStalled;
  }

  /** The recordings, in order of time. */
  List<Path> wavs() {
    try (Stream<Path> files = Files.list(folder.path())) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What a replay finds in a recording. */
  EntryCollector replay(Path wav) {
    Recording recording = Recording.open(wav);
    EntryCollector entries = new EntryCollector();
    try (SampleSource source = RecordingSource.atFullSpeed(recording)) {
      Monitor replay =
          new Monitor(
              source, new NoLamp(), entries, () -> 0, settings(recording.scale()), assignment);
      while (replay.step()) {
        // the step is the work
      }
      replay.close();
    }
    return entries;
  }

  private static PipelineSettings settings(PairScale scale) {
    return new PipelineSettings(scale, ArcRule.STANDARD, JudgingRule.STANDARD);
  }

  private static final class NoLamp implements Lamp {

    @Override
    public void show(Signal signal, long monotonicNanos) {
      // shown nowhere
    }

    @Override
    public void close() {
      // holds nothing
    }
  }

  /** Says what time its samples have. */
  private final class Timed implements SampleSource {

    private final SampleSource source;

    Timed(SampleSource source) {
      this.source = source;
    }

    @Override
    public Outcome read(SampleBlock block) {
      Outcome outcome = source.read(block);
      clock.advanceNanos(Math.max(0, block.monotonicNanos - sourceNanos));
      sourceNanos = block.monotonicNanos;
      return outcome;
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
      source.close();
    }
  }
}
