package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.testing.FrontEndPlayer;
import org.boothlamp.testing.PairStream;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A front end that plays in real time into the real library. */
class SerialSourceIT {

  private static final int RATE = 10_000;
  private static final long LONGEST_TEST_NANOS = TimeUnit.SECONDS.toNanos(20);

  @TempDir Path folder;

  private final PairStream pairs = PairStream.endless();
  private final SampleBlock block = new SampleBlock();
  private PtyPair cable;
  private SerialLine line;
  private SerialSource source;
  private FrontEndPlayer player;

  private long pairsRead;
  private long gaps;
  private long nextIndex;
  private long wrongPairs;

  /** How far the stream is ahead of the source's index. */
  private long streamAhead;

  private long[] latenessNanos = new long[0];

  @BeforeEach
  void open() throws IOException {
    cable = new PtyPair(folder);
    line = new SerialLine(cable.hostSide().toString(), 1_000_000);
    source = new SerialSource(line, NanoClock.SYSTEM);
    line.open();
    player = new FrontEndPlayer(cable.boardSide(), pairs, RATE);
  }

  @AfterEach
  void close() throws IOException {
    player.close();
    source.close();
    line.close();
    cable.close();
  }

  private void readUntil(BooleanSupplier done) {
    long start = System.nanoTime();
    while (!done.getAsBoolean()) {
      assertTrue(System.nanoTime() - start < LONGEST_TEST_NANOS, "it takes too long");
      if (source.read(block) == Outcome.PAIRS) {
        take();
      }
    }
  }

  private void take() {
    gaps += pairsRead > 0 && block.firstIndex != nextIndex ? 1 : 0;
    pairsRead += block.count;
    nextIndex = block.firstIndex + block.count;
    for (int pair = 0; pair < block.count; pair++) {
      long index = block.firstIndex + pair + streamAhead;
      boolean right =
          block.current[pair] == pairs.current(index)
              && block.voltage[pair] == pairs.voltage(index);
      wrongPairs += right ? 0 : 1;
    }
  }

  private void noteLateness() {
    latenessNanos = Arrays.copyOf(latenessNanos, latenessNanos.length + 1);
    latenessNanos[latenessNanos.length - 1] =
        block.monotonicNanos - player.sendNanosOfPair(nextIndex - 1);
  }

  @Test
  void shouldDeliverEveryPairInRealTimeWithoutAddingFiveMillis() {
    player.start();
    readUntil(
        () -> {
          if (block.count > 0) {
            noteLateness();
          }
          return pairsRead >= 2 * RATE;
        });
    assertEquals(0, gaps);
    assertEquals(0, wrongPairs);
    assertEquals(0, source.counters().badFrames);
    assertEquals(0, source.counters().lostPairs);
    Arrays.sort(latenessNanos);
    long median = latenessNanos[latenessNanos.length / 2];
    assertTrue(median < 5_000_000, () -> "median lateness " + median + " ns");
  }

  @Test
  void shouldLoseOnlyWhatWasDamagedOrDropped() {
    player
        .wire(
            (frame, number) -> {
              if (number % 50 == 20) {
                frame[7] ^= 0x08;
              }
              return number % 50 == 40 ? new byte[0] : frame;
            })
        .start();
    readUntil(() -> nextIndex >= RATE);
    assertEquals(0, wrongPairs);
    assertEquals(8, source.counters().badFrames);
    assertEquals(16 * 25, source.counters().lostPairs);
    assertEquals(16, gaps);
  }

  @Test
  void shouldFindBackAfterTheCableWasCut() throws IOException {
    player.start();
    readUntil(() -> pairsRead >= RATE / 2);
    cable.cut();
    readUntil(() -> line.failure() != null);
    cable.restore();
    long pairsBefore = pairsRead;
    readUntil(() -> pairsRead >= pairsBefore + RATE / 2);
    assertEquals(0, wrongPairs);
    assertEquals(1, gaps);
    assertEquals(1, source.counters().reconnects);
    assertEquals(nextIndex - pairsRead, source.counters().lostPairs);
    assertTrue(player.pairsDone() - nextIndex < RATE / 2, "index fell behind real time");
  }

  @Test
  void shouldKeepUpWithRealTimeWhenTheBoardStartsAgain() {
    player.start();
    readUntil(() -> pairsRead >= RATE / 2);
    player.fallSilent();
    readUntil(() -> player.pairsDone() >= nextIndex + RATE);
    player.restartBoard();
    player.speakAgain();
    long pairsBefore = pairsRead;
    readUntil(() -> pairsRead >= pairsBefore + 100);
    assertEquals(1, gaps);
    long behind = player.pairsDone() - nextIndex;
    assertTrue(Math.abs(behind) < RATE / 2, () -> "index is behind by " + behind);
  }

  @Test
  void shouldCarryLampFramesBackWhileItReads() {
    player.start();
    readUntil(() -> pairsRead > 0);
    FrameEncoder encoder = new FrameEncoder();
    LampFrame lamp = new LampFrame();
    byte[] wire = new byte[FrameEncoder.LONGEST_WIRE_BYTES];
    for (int i = 0; i < 7; i++) {
      lamp.counter = i;
      lamp.signalCode = i;
      assertTrue(line.write(wire, encoder.lamp(lamp, wire)));
    }
    readUntil(() -> player.lampFrames().size() == 7);
    assertEquals(6, player.lampFrames().get(6).signalCode());
  }
}
