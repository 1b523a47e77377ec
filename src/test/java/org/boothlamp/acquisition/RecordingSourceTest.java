package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingSourceTest {

  @TempDir Path folder;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final List<Long> pauses = new ArrayList<>();
  private final SampleBlock block = new SampleBlock();

  private Recording recording(int pairsPerSecond, int pairs) {
    return Recording.open(RecordingCase.write(folder.resolve("case.wav"), pairsPerSecond, pairs));
  }

  private SampleSource realTime(int pairsPerSecond, int pairs) {
    return RecordingSource.inRealTime(recording(pairsPerSecond, pairs), clock, pauses::add);
  }

  @Test
  void shouldEndAfterTheLastPair() {
    try (SampleSource source = RecordingSource.atFullSpeed(recording(5_000, 2_345))) {
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(1_000, block.count);
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(345, block.count);
      assertEquals(Outcome.END, source.read(block));
      assertEquals(Outcome.END, source.read(block));
    }
  }

  @Test
  void shouldCountTimeFromItsPairsAtFullSpeed() {
    try (SampleSource source = RecordingSource.atFullSpeed(recording(5_000, 2_345))) {
      source.read(block);
      assertEquals(200_000_000L, block.monotonicNanos);
      source.read(block);
      source.read(block);
      assertEquals(469_000_000L, block.monotonicNanos);
    }
  }

  @Test
  void shouldTellItsRateItsRangeAndItsFile() {
    try (SampleSource source = RecordingSource.atFullSpeed(recording(5_000, 10))) {
      assertEquals(new SourceFormat(5_000, -32_768, 32_767, "case.wav"), source.format());
    }
  }

  @Test
  void shouldDeliverPairsInRealTimeWhenTheyAreDue() {
    try (SampleSource source = realTime(5_000, 1_000)) {
      assertEquals(Outcome.NOTHING, source.read(block));
      assertEquals(List.of(10_000_000L), pauses);
      clock.advanceMillis(10);
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(50, block.count);
      assertEquals(clock.nanoTime(), block.monotonicNanos);
      clock.advanceMillis(25);
      source.read(block);
      assertEquals(50, block.firstIndex);
      assertEquals(125, block.count);
      assertEquals(1, pauses.size());
    }
  }

  @Test
  void shouldCatchUpInFullBlocksAfterAStall() {
    try (SampleSource source = realTime(5_000, 10_000)) {
      source.read(block);
      pauses.clear();
      clock.advanceMillis(500);
      source.read(block);
      assertEquals(1_000, block.count);
      source.read(block);
      assertEquals(1_000, block.count);
      source.read(block);
      assertEquals(500, block.count);
      assertEquals(0, pauses.size());
    }
  }

  @Test
  void shouldNotDriftAtARateThatDoesNotDivide() {
    try (SampleSource source = realTime(333, 3_000)) {
      source.read(block);
      long pairs = 0;
      for (int i = 0; i < 500; i++) {
        clock.advanceMillis(11);
        source.read(block);
        pairs += block.count;
      }
      assertEquals(5_500 * 333 / 1_000, pairs);
    }
  }

  @Test
  void shouldEndInRealTimeToo() {
    try (SampleSource source = realTime(5_000, 60)) {
      source.read(block);
      clock.advanceMillis(1_000);
      source.read(block);
      assertEquals(60, block.count);
      assertEquals(Outcome.END, source.read(block));
    }
  }

  @Test
  void shouldSayThatTheFileBecameShorterWhileItWasRead() throws IOException {
    Recording recording = recording(5_000, 50_000);
    try (SampleSource source = RecordingSource.atFullSpeed(recording)) {
      try (FileChannel file = FileChannel.open(recording.wav(), StandardOpenOption.WRITE)) {
        file.truncate(44 + 4 * 1_500);
      }
      source.read(block);
      SourceException thrown =
          assertThrows(SourceException.class, () -> source.read(new SampleBlock()));
      assertTrue(thrown.what().contains("pair 1500 of 50000"), thrown.what());
    }
  }
}
