package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.acquisition.RecorderRun.Told;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

class SegmentRecorderTest {

  private static final List<String> NAMES = KnownRecording.NAMES;
  private static final int RATE = 5_000;

  /** Sums are whole counts: only a zero that is not whole makes the last digits differ. */
  private static final double RELATIVE = 1e-12;

  private static final Assignment ASSIGNMENT =
      new Assignment("T-01", Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), Plans.volts(20, 26)));

  @TempDir Path temporary;

  private Path folder() {
    return temporary.resolve("recordings");
  }

  private RecorderRun run() {
    return new RecorderRun(folder(), RecorderRun.ROOMY, ASSIGNMENT);
  }

  private RecorderRun play(PairScript script, int blockPairs) {
    ScriptedSource source = new ScriptedSource(script.pairsPerSecond()).pairs(script, blockPairs);
    return run().play(source, script.scale());
  }

  /** Every segment has a recording, and its replay finds that segment and nothing else. */
  private static void assertReplaysAsLive(RecorderRun run) {
    List<LogEntry> segments = run.live.of(LogEntry.Kind.SEGMENT_ENDED);
    List<Path> wavs = run.wavs();
    assertEquals(segments.size(), wavs.size());
    int excursion = 0;
    List<LogEntry> excursions = run.live.of(LogEntry.Kind.EXCURSION);
    for (int k = 0; k < wavs.size(); k++) {
      EntryCollector replay = run.replay(wavs.get(k));
      assertEquals(0, replay.of(LogEntry.Kind.TOUCH).size());
      assertEquals(1, replay.of(LogEntry.Kind.SEGMENT_ENDED).size());
      LogEntry again = replay.of(LogEntry.Kind.SEGMENT_ENDED).get(0);
      assertSameFigures(segments.get(k), again);
      for (LogEntry found : replay.of(LogEntry.Kind.EXCURSION)) {
        assertSameExcursion(segments.get(k), excursions.get(excursion++), again, found);
      }
    }
    assertEquals(excursions.size(), excursion);
  }

  private static void assertSameFigures(LogEntry live, LogEntry again) {
    assertSame(live.figures.lengthSeconds, again.figures.lengthSeconds);
    assertSame(live.figures.meanAmps, again.figures.meanAmps);
    assertSame(live.figures.meanVolts, again.figures.meanVolts);
    assertSame(live.figures.rmsAmps, again.figures.rmsAmps);
    assertSame(live.figures.rmsVolts, again.figures.rmsVolts);
    assertSame(live.figures.energyJoules, again.figures.energyJoules);
    assertSame(live.figures.meanWatts, again.figures.meanWatts);
    assertSame(live.figures.greenSeconds, again.figures.greenSeconds);
    assertSame(live.figures.amberSeconds, again.figures.amberSeconds);
    assertSame(live.figures.redSeconds, again.figures.redSeconds);
    assertSame(live.figures.settlingSeconds, again.figures.settlingSeconds);
    assertSame(live.figures.faultSeconds, again.figures.faultSeconds);
    assertSame(live.figures.missingSeconds, again.figures.missingSeconds);
    assertEquals(live.figures.shortCircuits, again.figures.shortCircuits);
    assertEquals(live.figures.arcOuts, again.figures.arcOuts);
    assertEquals(live.figures.polarity, again.figures.polarity);
  }

  private static void assertSameExcursion(
      LogEntry liveSegment, LogEntry live, LogEntry againSegment, LogEntry again) {
    assertEquals(live.quantity, again.quantity);
    assertEquals(live.side, again.side);
    assertSame(live.lengthSeconds, again.lengthSeconds);
    assertSame(live.worst, again.worst);
    assertEquals(
        live.startSeconds - liveSegment.startSeconds,
        again.startSeconds - againSegment.startSeconds,
        1e-6);
  }

  private static void assertSame(double live, double again) {
    assertEquals(live, again, Math.abs(live) * RELATIVE);
  }

  @ParameterizedTest
  @FieldSource("NAMES")
  void shouldReplayEverySegmentToTheVerdictItHadLive(String name) {
    KnownRecording known = KnownRecording.load(name);
    Path wav = temporary.resolve(name + ".wav");
    try (RecordingWriter writer = new RecordingWriter(wav, known.pairsPerSecond(), known.scale())) {
      for (int at = 0; at < known.current().length; at += 1_000) {
        int end = Math.min(at + 1_000, known.current().length);
        writer.write(
            Arrays.copyOfRange(known.current(), at, end),
            Arrays.copyOfRange(known.voltage(), at, end),
            end - at);
      }
    }
    RecorderRun run =
        new RecorderRun(folder(), RecorderRun.ROOMY, new Assignment("T-01", known.plan()));
    run.play(RecordingSource.atFullSpeed(Recording.open(wav)), known.scale());
    assertReplaysAsLive(run);
    assertEquals(List.of(), run.told);
  }

  @ParameterizedTest
  @ValueSource(ints = {200, 333, 430, 5_000, 10_000})
  void shouldReplayGapsAndOddRatesAsLive(int rate) {
    PairScript script =
        PairScript.at(rate).idle(1.37).arc(110, 23, 2).gap(0.15).arc(112, 24, 1.5).off(0.2);
    script.arc(140, 23, 2).idle(2.11).gap(3).idle(1.1).arc(100, 22, 3).idle(0.1).gap(2);
    RecorderRun run = play(script.idle(2), 100);
    assertEquals(2, run.wavs().size());
    assertReplaysAsLive(run);
  }

  @Test
  void shouldKeepASegmentThatEndsWithTheSamples() {
    PairScript script = PairScript.at(RATE).idle(1).arc(110, 23, 2).gap(0.9).idle(1);
    assertReplaysAsLive(play(script, 100));
  }

  @Test
  void shouldKeepTheZeroThatTheClampHadMovedTo() {
    PairScale scale = new PairScale(new ChannelScale(1.0 / 16, 12), new ChannelScale(1.0 / 128, 3));
    PairScript script = PairScript.at(RATE, scale).arc(1.5, 70, 2).arc(111.5, 23, 3);
    RecorderRun run = play(script.arc(1.5, 70, 2), 100);
    assertEquals(36, Recording.open(run.wavs().get(0)).scale().current().zeroCount());
    assertReplaysAsLive(run);
  }

  @Test
  void shouldKeepNoTouches() {
    PairScript script = PairScript.at(RATE).idle(1).arc(180, 2, 0.1).idle(1).arc(180, 2, 3).idle(1);
    RecorderRun run = play(script, 100);
    assertEquals(2, run.live.of(LogEntry.Kind.TOUCH).size());
    run.recorder.close();
    assertEquals(0, folder().toFile().list().length);
  }

  @Test
  void shouldNotMixContactsThatFollowEachOther() {
    PairScript script = PairScript.at(RATE).idle(1).arc(180, 2, 0.1).idle(0.2).arc(110, 23, 2);
    RecorderRun run = play(script.idle(0.35).arc(111, 23, 2).idle(0.4).arc(180, 2, 0.1), 100);
    assertEquals(2, run.wavs().size());
    assertReplaysAsLive(run);
  }

  @Test
  void shouldKeepASegmentWhoseSourceEndsWithIt() {
    RecorderRun run = play(PairScript.at(RATE).idle(1).arc(110, 23, 2), 100);
    run.clock.advanceMillis(2_000);
    run.recorder.work();
    assertReplaysAsLive(run);
  }

  @Test
  void shouldSayBesideTheRecordingWhatWasWelded() throws IOException {
    RecorderRun run = play(PairScript.at(RATE).idle(1).arc(110, 23, 2).idle(1), 100);
    Path wav = run.wavs().get(0);
    String sheet = Files.readString(RecordingScale.fileBeside(wav));
    assertTrue(sheet.contains("booth = \"B-07\"\nstart = "), sheet);
    assertTrue(sheet.contains("trainee = \"T-01\""), sheet);
    LogEntry started = run.live.of(LogEntry.Kind.SEGMENT_STARTED).get(0);
    assertEquals(wav, run.folder.find(RecorderRun.MACHINE_BOOT, started.monotonicNanos));
  }

  @Test
  void shouldLoseNothingWhileTheDiskStallsForTenSeconds() {
    RecorderRun run = run();
    PairScript script = PairScript.at(10_000).idle(1).arc(110, 23, 12).idle(1).arc(110, 23, 3);
    ScriptedSource source = new ScriptedSource(10_000);
    source.pairs(PairScript.at(10_000).idle(1).arc(110, 23, 2), 100);
    source.then(() -> run.stall(true)).pairs(script, 100, 30_000);
    source.then(() -> run.stall(false)).pairs(PairScript.at(10_000).idle(2), 100, 200_000);
    run.play(source, script.scale());
    assertEquals(List.of(), run.told);
    assertReplaysAsLive(run);
  }

  @Test
  void shouldSayWhatIsMissingAfterAStallThatTheRingCannotBridge() {
    RecorderRun run = run();
    ScriptedSource source = new ScriptedSource(10_000);
    source.pairs(PairScript.at(10_000).idle(1).arc(110, 23, 2), 100);
    source.then(() -> run.stall(true));
    source.pairs(PairScript.at(10_000).arc(110, 23, 60), 100, 30_000);
    source.then(() -> run.stall(false));
    source.pairs(PairScript.at(10_000).arc(110, 23, 1).idle(2), 100, 630_000);
    run.play(source, PairScript.SCALE);
    Recording recording = Recording.open(run.wavs().get(0));
    assertEquals(1, recording.gaps().size());
    long missing = recording.gaps().get(0).pairs();
    assertTrue(missing > 50_000 && missing < 150_000, () -> "pairs missing: " + missing);
    assertEquals(EventKind.RECORDING_GAP, run.told.get(0).kind());
    assertTrue(run.told.get(0).detail().contains(missing + " pairs were not recorded"));
    assertEquals(1, run.told.size());
    assertEquals(63, run.live.of(LogEntry.Kind.SEGMENT_ENDED).get(0).figures.lengthSeconds);
  }

  @Test
  void shouldStopWithOneEventWhileTheDiskRefusesAndGoOnLater() throws IOException {
    Files.writeString(folder(), "a file where the folder should be");
    PairScript script = PairScript.at(RATE).idle(1).arc(110, 23, 2).idle(1).arc(110, 23, 2);
    RecorderRun run = run();
    ScriptedSource source = new ScriptedSource(RATE).pairs(script.idle(90), 100);
    source.then(() -> assertTrue(folder().toFile().delete()));
    source.pairs(PairScript.at(RATE).arc(110, 23, 2).idle(2), 100, 96 * RATE);
    run.play(source, script.scale());
    assertEquals(
        List.of(EventKind.RECORDINGS_STOPPED, EventKind.RECORDINGS_RESUMED),
        run.told.stream().map(Told::kind).toList());
    assertEquals(3, run.live.of(LogEntry.Kind.SEGMENT_ENDED).size());
    assertEquals(1, run.wavs().size());
  }

  @Test
  void shouldDeleteTheOldestWhenThereAreTooManyBytes() {
    RecorderRun run = new RecorderRun(folder(), new RecordingLimits(150_000, 0, 0), ASSIGNMENT);
    PairScript script = PairScript.at(RATE);
    for (int k = 0; k < 5; k++) {
      script.idle(1.5).arc(110, 23, 2);
    }
    run.play(new ScriptedSource(RATE).pairs(script.idle(2), 100), script.scale());
    List<LogEntry> started = run.live.of(LogEntry.Kind.SEGMENT_STARTED);
    assertEquals(
        List.of(
            run.folder.find(RecorderRun.MACHINE_BOOT, started.get(3).monotonicNanos),
            run.folder.find(RecorderRun.MACHINE_BOOT, started.get(4).monotonicNanos)),
        run.wavs());
    assertEquals(List.of(), run.told);
  }
}
