package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Worker;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.RecordingLampOutput;
import org.junit.jupiter.api.Test;

class RefreshedLampTest {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final RecordingLampOutput output = new RecordingLampOutput(clock);
  private final RecordingLampOutput other = new RecordingLampOutput(clock);
  private final HandDrivenLamp driven = new HandDrivenLamp(clock, RedStyle.STEADY, output, other);

  @Test
  void shouldBeDarkUntilSomethingIsShown() {
    driven.pass(400);
    assertEquals(List.of(Signal.DARK), output.signals());
  }

  @Test
  void shouldApplyEveryChangeInOrderWithTheTimeOfItsSamples() {
    driven.lamp.show(Signal.GREEN, 10);
    driven.lamp.show(Signal.RED, 20);
    driven.lamp.show(Signal.RED, 30);
    driven.lamp.show(Signal.GREEN, 40);
    driven.step();
    assertEquals(List.of(Signal.GREEN, Signal.RED, Signal.GREEN), output.signals());
    assertEquals(
        List.of(10L, 20L, 40L),
        output.changes().stream().map(RecordingLampOutput.Applied::samplesNanos).toList());
  }

  @Test
  void shouldShowTheSameOnEveryOutput() {
    driven.keepShowing(Signal.SETTLING, 300);
    driven.keepShowing(Signal.AMBER, 300);
    assertEquals(output.applied(), other.applied());
    assertEquals(Signal.AMBER, output.last().signal());
  }

  @Test
  void shouldApplyAChangeInTheStepAfterIt() {
    driven.keepShowing(Signal.GREEN, 300);
    driven.show(Signal.RED);
    assertEquals(LampPattern.RED, output.last().lights());
    assertEquals(clock.nanoTime(), output.last().appliedNanos());
  }

  @Test
  void shouldStartThePatternWithTheSignal() {
    driven.keepShowing(Signal.GREEN, 1_300);
    driven.show(Signal.IDLE);
    driven.pass(99);
    assertEquals(LampPattern.GREEN, output.last().lights());
    driven.pass(1);
    assertEquals(0, output.last().lights());
  }

  @Test
  void shouldGoOnWithThePatternWhenTheSameSignalIsShownAgain() {
    driven.keepShowing(Signal.IDLE, 4_000);
    assertEquals(LampPattern.GREEN, output.last().lights());
    driven.show(Signal.IDLE);
    driven.pass(100);
    assertEquals(0, output.last().lights());
  }

  @Test
  void shouldPulseRedWhenAsked() {
    RecordingLampOutput pulsing = new RecordingLampOutput(clock);
    HandDrivenLamp lamp = new HandDrivenLamp(clock, RedStyle.PULSING, pulsing);
    lamp.show(Signal.RED);
    assertEquals(LampPattern.RED, pulsing.last().lights());
    lamp.keepShowing(Signal.RED, 500);
    assertEquals(0, pulsing.last().lights());
  }

  @Test
  void shouldRestNoLongerThanFiftyMillisecondsAndUpToTheNextBlink() {
    List<Long> rests = new ArrayList<>();
    RefreshedLamp lamp =
        new RefreshedLamp(
            List.of(new RecordingLampOutput(clock)),
            new LampPattern(RedStyle.STEADY),
            clock,
            rests::add);
    Worker worker = lamp.workers().get(0);
    worker.start();
    lamp.show(Signal.IDLE, 1);
    worker.step();
    clock.advanceMillis(70);
    worker.step();
    clock.advanceMillis(30);
    worker.step();
    assertEquals(List.of(50_000_000L, 30_000_000L, 50_000_000L), rests);
  }

  @Test
  void shouldShowFaultByItselfAfterHalfASecondWithoutAShow() {
    driven.show(Signal.GREEN);
    driven.pass(499);
    assertEquals(Signal.GREEN, output.last().signal());
    driven.pass(1);
    assertEquals(Signal.FAULT, output.last().signal());
    assertEquals(1_000, output.last().samplesNanos(), "samples of the last signal before it");
  }

  @Test
  void shouldBeatOnlyWhileSomethingIsShown() {
    driven.pass(300);
    assertEquals(0, output.beats());
    driven.keepShowing(Signal.GREEN, 1_000);
    assertEquals(10, output.beats());
    driven.pass(3_000);
    assertEquals(10, output.beats());
    assertTrue(output.tries() >= 4_300 / 50, "refreshed all the same");
  }

  @Test
  void shouldNotBeatForAnOutputThatDoesNotShow() {
    output.failWith(new IOException("pin gone"));
    driven.keepShowing(Signal.GREEN, 500);
    output.failWith(null);
    assertEquals(0, output.beats());
    assertEquals(5, other.beats());
  }

  @Test
  void shouldGoOnWithTheOtherOutputsWhenOneFails() {
    output.failWith(new IOException("disk full"));
    driven.keepShowing(Signal.GREEN, 300);
    driven.keepShowing(Signal.RED, 300);
    assertEquals(List.of(), output.applied());
    assertEquals(List.of(Signal.GREEN, Signal.RED), other.signals());
    assertEquals(output.tries(), driven.lamp.failures());
  }

  @Test
  void shouldTryAFailedOutputAgainUntilItWorks() {
    output.failWith(new IllegalStateException("pin gone"));
    driven.keepShowing(Signal.GREEN, 5_000);
    int tries = output.tries();
    assertTrue(tries >= 5 && tries <= 20, tries + " tries in 5 s");
    output.failWith(null);
    driven.keepShowing(Signal.GREEN, 1_000);
    assertEquals(List.of(Signal.GREEN), output.signals());
    assertEquals(tries, driven.lamp.failures());
  }

  @Test
  void shouldTryAtOnceWhenTheSignalChanges() {
    output.failWith(new IOException("unplugged"));
    driven.keepShowing(Signal.GREEN, 5_000);
    output.failWith(null);
    driven.show(Signal.RED);
    assertEquals(List.of(Signal.RED), output.signals());
  }

  @Test
  void shouldSurviveEvenAnError() {
    output.failWith(new OutOfMemoryError("as a test"));
    driven.keepShowing(Signal.GREEN, 500);
    output.failWith(null);
    driven.show(Signal.RED);
    assertEquals(List.of(Signal.RED), output.signals());
  }

  @Test
  void shouldApplyWhatWasShownLastBeforeItGoesDark() {
    driven.show(Signal.GREEN);
    driven.lamp.show(Signal.RED, 2_000);
    driven.lamp.close();
    assertEquals(List.of(Signal.GREEN, Signal.RED, Signal.DARK), output.signals());
  }

  @Test
  void shouldCloseEachOutputOnceEvenIfOneFails() {
    driven.show(Signal.GREEN);
    output.failWith(new IOException("pin gone"));
    driven.lamp.close();
    driven.lamp.close();
    assertEquals(1, output.closes());
    assertEquals(1, other.closes());
    assertEquals(Signal.DARK, other.last().signal());
  }

  @Test
  void shouldEndItsStepsOnceClosed() {
    driven.lamp.close();
    assertFalse(driven.lamp.workers().get(0).step());
  }

  @Test
  void shouldCallItsFirstThreadLamp() {
    assertEquals(
        List.of("lamp", "lamp-2"), driven.lamp.workers().stream().map(Worker::roleName).toList());
  }
}
