package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.BoardFrames;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;

class SerialSourceTest {

  private static final int RATE = 10_000;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final MemoryLine line = new MemoryLine();
  private final PairStream pairs = PairStream.endless();
  private final BoardFrames board = new BoardFrames(pairs, RATE);
  private final SerialSource source = new SerialSource(line, clock);
  private final SampleBlock block = new SampleBlock();

  private void assertReadsPairs(long firstIndex, int count) {
    assertEquals(Outcome.PAIRS, source.read(block));
    assertEquals(firstIndex, block.firstIndex);
    assertEquals(count, block.count);
  }

  private void assertReadsNothing() {
    assertEquals(Outcome.NOTHING, source.read(block));
    assertEquals(0, block.count);
    assertEquals(clock.nanoTime(), block.monotonicNanos);
  }

  /** Hello and one frame of 100 pairs, read. */
  private void begin() {
    line.send(board.hello());
    line.send(board.samples(100));
    assertReadsPairs(0, 100);
  }

  @Test
  void shouldDeliverNothingBeforeTheBoardSaysHello() {
    line.send(board.samples(50));
    assertReadsNothing();
    assertNull(source.format());
    line.send(board.hello());
    line.send(board.samples(50));
    assertReadsPairs(0, 50);
    assertEquals(pairs.current(50), block.current[0]);
    assertEquals(new SourceFormat(RATE, -2048, 2047, "bench-1"), source.format());
  }

  @Test
  void shouldCountFromItsFirstPairWhateverTheBoardsIndex() {
    board.runTo(123_456);
    begin();
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldMergeFramesThatFollowEachOtherUpToABlock() {
    begin();
    for (int i = 0; i < 12; i++) {
      line.send(board.samples(90));
    }
    assertReadsPairs(100, 990);
    assertReadsPairs(1090, 90);
    assertReadsNothing();
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldPutTogetherAFrameThatArrivesInPieces() {
    begin();
    byte[] frame = board.samples(40);
    for (int i = 0; i + 1 < frame.length; i++) {
      line.send(new byte[] {frame[i]});
      assertReadsNothing();
    }
    line.send(new byte[] {0});
    assertReadsPairs(100, 40);
  }

  @Test
  void shouldShowLostPairsAsAJumpOfTheIndex() {
    begin();
    line.send(board.samples(25));
    board.samples(25);
    line.send(board.samples(25));
    assertReadsPairs(100, 25);
    assertReadsPairs(150, 25);
    assertEquals(25, source.counters().lostPairs);
  }

  @Test
  void shouldGoOnWhenTheBoardsIndexRunsOver() {
    board.runTo(-60);
    begin();
    line.send(board.samples(50));
    assertReadsPairs(100, 50);
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldCountPairsLostWhileTheIndexRunsOver() {
    board.runTo(-150);
    begin();
    board.samples(80);
    line.send(board.samples(10));
    assertReadsPairs(180, 10);
    assertEquals(80, source.counters().lostPairs);
  }

  @Test
  void shouldDeliverNoPairOfAFrameThatFailsItsCrc() {
    begin();
    byte[] frame = board.samples(30);
    frame[20] ^= 0x40;
    line.send(frame);
    assertReadsNothing();
    assertEquals(1, source.counters().badFrames);
    line.send(board.samples(30));
    assertReadsPairs(130, 30);
    assertEquals(30, source.counters().lostPairs);
  }

  @Test
  void shouldBelieveALargeJumpAheadWhoseCrcIsRight() {
    begin();
    board.runTo(50_000_000);
    clock.advanceMillis(10);
    line.send(board.samples(10));
    assertReadsPairs(50_000_000, 10);
    assertEquals(49_999_900, source.counters().lostPairs);
  }

  @Test
  void shouldDropADuplicateEvenJustAfterAHello() {
    begin();
    byte[] frame = board.samples(25);
    line.send(frame);
    line.send(board.hello());
    line.send(frame);
    line.send(board.samples(25));
    assertReadsPairs(100, 50);
    assertEquals(0, source.counters().lostPairs);
    assertReadsNothing();
  }

  @Test
  void shouldTurnARestartOfTheBoardIntoMissingTimeByTheClock() {
    begin();
    clock.advanceMillis(700);
    board.restart();
    line.send(board.hello());
    line.send(board.samples(100));
    assertReadsPairs(100 + 7_000 - 100, 100);
    assertEquals(0, source.counters().lostPairs);
    line.send(board.samples(100));
    assertReadsPairs(7_100, 100);
  }

  @Test
  void shouldNoticeARestartByTheNextHelloIfTheFirstIsDamaged() {
    begin();
    for (int i = 0; i < 10; i++) {
      line.send(board.samples(100));
    }
    assertReadsPairs(100, 1_000);
    clock.advanceMillis(500);
    board.restart();
    line.send(board.samples(100));
    assertReadsNothing();
    clock.advanceMillis(1_000);
    line.send(board.hello());
    line.send(board.samples(100));
    assertReadsPairs(1_100 + 15_000 - 100, 100);
  }

  @Test
  void shouldNoticeARestartAfterMoreThanHalfTheRangeOfTheIndex() {
    board.runTo(0xC000_0000);
    begin();
    clock.advanceMillis(2_000);
    board.restart();
    line.send(board.hello());
    line.send(board.samples(100));
    assertReadsPairs(20_000, 100);
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldCountPairsThatTheBoardSampledWhileTheCableWasOut() {
    begin();
    line.cut();
    clock.advanceMillis(2_000);
    assertReadsNothing();
    assertNotNull(source.problem());
    line.mend();
    board.samples(50);
    board.runTo(100 + 20_000);
    line.send(board.hello());
    line.send(board.samples(50));
    assertReadsPairs(20_100, 50);
    assertNull(source.problem());
    assertEquals(1, source.counters().reconnects);
    assertEquals(20_000, source.counters().lostPairs);
  }

  @Test
  void shouldTakeTheClockIfTheIndexMeansNothingAfterAReconnect() {
    begin();
    line.cut();
    assertReadsNothing();
    line.mend();
    clock.advanceMillis(3_000);
    board.runTo(999_999);
    line.send(board.hello());
    line.send(board.samples(50));
    assertReadsPairs(100 + 30_000 - 50, 50);
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldWaitForAHelloAfterAReconnect() {
    begin();
    line.cut();
    assertReadsNothing();
    line.mend();
    line.send(board.samples(50));
    assertReadsNothing();
    line.send(board.hello());
    line.send(board.samples(50));
    assertEquals(Outcome.PAIRS, source.read(block));
  }

  @Test
  void shouldNotCountTheFrameThatACutLeftUnfinished() {
    begin();
    byte[] frame = board.samples(50);
    line.send(frame, 20);
    assertReadsNothing();
    line.cut();
    assertReadsNothing();
    line.mend();
    line.send(board.hello());
    line.send(board.samples(50));
    assertEquals(Outcome.PAIRS, source.read(block));
    assertEquals(0, source.counters().badFrames);
  }

  @Test
  void shouldDeliverPairsOfTheOldFormatBeforeItTellsTheNewOne() {
    begin();
    line.send(board.samples(100));
    board.says().pairsPerSecond = 5_000;
    line.send(board.hello());
    line.send(board.samples(100));
    assertReadsPairs(100, 100);
    assertEquals(RATE, source.format().pairsPerSecond());
    assertReadsPairs(100, 100);
    assertEquals(5_000, source.format().pairsPerSecond());
  }

  @Test
  void shouldTellAnotherBoardByItsHello() {
    begin();
    board.says().boardId("bench-2");
    board.says().highestCount = 4095;
    line.send(board.hello());
    line.send(board.samples(1));
    assertReadsPairs(100, 1);
    assertEquals(new SourceFormat(RATE, -2048, 4095, "bench-2"), source.format());
  }

  @Test
  void shouldRefuseABoardOfAnotherVersionAndSayWhatToDo() {
    board.says().version = 2;
    line.send(board.hello());
    line.send(board.samples(10));
    assertReadsNothing();
    assertEquals(
        "front end \"bench-1\": it speaks version 2 of the frames, not 1; use the version of board"
            + " and monitor that belong together",
        source.problem().getMessage());
  }

  @Test
  void shouldRefuseAnImpossibleHelloUntilABetterOneComes() {
    begin();
    board.says().pairsPerSecond = 100;
    line.send(board.hello());
    line.send(board.samples(10));
    assertReadsNothing();
    assertTrue(source.problem().what().contains("at least 200"), source.problem().what());
    board.says().pairsPerSecond = RATE;
    board.says().lowestCount = 2047;
    line.send(board.hello());
    assertReadsNothing();
    assertTrue(source.problem().what().contains("2047 and 2047"), source.problem().what());
    board.says().lowestCount = -2048;
    line.send(board.hello());
    line.send(board.samples(10));
    assertReadsPairs(110, 10);
    assertNull(source.problem());
  }

  @Test
  void shouldLeaveTheLineOpenForTheLampWhenItCloses() {
    begin();
    source.close();
    assertEquals(Outcome.END, source.read(block));
    assertTrue(line.write(new byte[] {1}, 1));
  }

  @Test
  void shouldAskTheLineToWaitLessThanTheLongestWait() {
    assertReadsNothing();
    assertTrue(line.longestWaitNanos() < SampleSource.LONGEST_WAIT_NANOS);
  }
}
