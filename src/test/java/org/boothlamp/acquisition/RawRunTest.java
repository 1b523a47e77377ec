package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.report.RawColumns;
import org.boothlamp.report.RawPairSink;
import org.boothlamp.report.RawRecording;
import org.boothlamp.report.RawWindow;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.ScriptedSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RawRunTest {

  @TempDir Path folder;

  private RecorderRun weld(PairScript script) {
    ScriptedSource source = new ScriptedSource(script.pairsPerSecond()).pairs(script, 100);
    return new RecorderRun(folder.resolve("recordings"), RecorderRun.ROOMY, Assignment.NONE)
        .play(source, script.scale());
  }

  /** Second 0 of what is zoomed into is second 0 of the run, also where contacts are close. */
  @ParameterizedTest
  @ValueSource(ints = {5_000, 1_234, 10_000})
  void shouldCountSecondsFromTheStartOfTheRunInTheLog(int rate) {
    PairScript script =
        PairScript.at(rate).idle(1).arc(110, 23, 2.5).idle(0.42).arc(90, 21, 1.5).idle(1);
    RecorderRun run = weld(script);
    List<LogEntry> segments = run.live.of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(2, segments.size());
    for (int k = 0; k < 2; k++) {
      RawRecording raw = RawRun.open(run.wavs().get(k));
      assertTrue(raw.startSeconds() <= 0);
      assertTrue(raw.endSeconds() >= segments.get(k).figures.lengthSeconds);
      RawColumns before = columns(raw, raw.startSeconds(), -0.001);
      assertTrue(highest(before.highestAmps) < 10, Arrays.toString(before.highestAmps));
      RawColumns arc = columns(raw, 0.011, 1);
      assertTrue(Arrays.stream(arc.lowestAmps).min().orElse(0) > 50);
    }
  }

  private static double highest(double[] values) {
    return Arrays.stream(values).filter(value -> !Double.isNaN(value)).max().orElse(0);
  }

  private static RawColumns columns(RawRecording raw, double from, double until) {
    return RawColumns.of(RawWindow.of(raw, from, until), Polarity.DC_PLUS, 50);
  }

  @Test
  void shouldReadAnyPartAndSayWhereNothingArrived() {
    Path wav = folder.resolve("parts.wav");
    short[] counts = new short[4_000];
    for (int k = 0; k < counts.length; k++) {
      counts[k] = (short) k;
    }
    try (RecordingWriter writer = new RecordingWriter(wav, 1_000, RecordingCase.SCALE)) {
      writer.write(Arrays.copyOf(counts, 2_000), Arrays.copyOf(counts, 2_000), 2_000);
      writer.writeGap(10);
      writer.write(Arrays.copyOf(counts, 1_000), Arrays.copyOf(counts, 1_000), 1_000);
    }
    RawRun run = RawRun.open(wav);
    List<Integer> read = new ArrayList<>();
    run.read(
        1_998,
        14,
        new RawPairSink() {
          @Override
          public void take(short current, short voltage) {
            assertEquals(current, voltage);
            read.add((int) current);
          }

          @Override
          public void miss() {
            read.add(-1);
          }
        });
    int[] expected = {1_998, 1_999, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, 0, 1};
    assertArrayEquals(expected, read.stream().mapToInt(Integer::intValue).toArray());
    assertThrows(IndexOutOfBoundsException.class, () -> run.read(3_000, 100, null));
  }

  @Test
  void shouldTakeTheUsualHalfSecondWhereTheStartIsNotSaid() throws IOException {
    Path wav = folder.resolve("plain.wav");
    try (RecordingWriter writer = new RecordingWriter(wav, 1_000, RecordingCase.SCALE)) {
      writer.write(new short[1_000], new short[1_000], 1_000);
    }
    assertEquals(-0.5, RawRun.open(wav).startSeconds());
    Files.writeString(
        RecordingScale.fileBeside(wav),
        Files.readString(RecordingScale.fileBeside(wav)) + "[segment]\ncontact_pair = 120\n");
    assertEquals(-0.12, RawRun.open(wav).startSeconds());
    assertEquals(0.88, RawRun.open(wav).endSeconds());
  }
}
