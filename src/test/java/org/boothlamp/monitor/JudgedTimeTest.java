package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boothlamp.judging.Signal;
import org.junit.jupiter.api.Test;

class JudgedTimeTest {

  private final JudgedTime time = new JudgedTime();

  private void arc(Signal signal, int slots) {
    for (int k = 0; k < slots; k++) {
      time.addArcOn(signal);
    }
  }

  private void off(Signal signal, int slots) {
    for (int k = 0; k < slots; k++) {
      time.addArcOff(signal);
    }
  }

  private void assertSlots(int green, int amber, int fault) {
    assertEquals(green / 100.0, time.seconds(Signal.GREEN), 1e-9, "green");
    assertEquals(amber / 100.0, time.seconds(Signal.AMBER), 1e-9, "amber");
    assertEquals(fault / 100.0, time.seconds(Signal.FAULT), 1e-9, "fault");
  }

  @Test
  void shouldTakeBackWhatWasJudgedSinceTheFaultBegan() {
    arc(Signal.GREEN, 100);
    arc(Signal.AMBER, 20);
    time.recall(30);
    assertSlots(90, 0, 30);
  }

  @Test
  void shouldTakeBackNoMoreThanTheSlowestFaultTakesToBeFound() {
    arc(Signal.GREEN, JudgedTime.RECALL_SLOTS + 150);
    time.recall(1_000_000);
    assertSlots(150, 0, JudgedTime.RECALL_SLOTS);
  }

  @Test
  void shouldTakeBackNoMoreThanThereIs() {
    arc(Signal.GREEN, 10);
    time.recall(50);
    assertSlots(0, 0, 10);
  }

  @Test
  void shouldTakeBackASlotOnceOnly() {
    arc(Signal.GREEN, 100);
    time.recall(20);
    time.recall(30);
    assertSlots(70, 0, 30);
  }

  @Test
  void shouldTakeBackSlotsWithoutCurrentThatStillWait() {
    arc(Signal.GREEN, 40);
    off(Signal.GREEN, 10);
    time.recall(15);
    assertSlots(35, 0, 5);
    arc(Signal.AMBER, 1);
    assertSlots(35, 1, 15);
  }

  @Test
  void shouldTakeBackSlotsWithoutCurrentThatCountAlready() {
    arc(Signal.GREEN, 40);
    off(Signal.AMBER, 10);
    arc(Signal.GREEN, 5);
    time.recall(10);
    assertSlots(40, 5, 10);
  }

  @Test
  void shouldForgetTheSegmentBefore() {
    arc(Signal.GREEN, 40);
    time.clear();
    arc(Signal.AMBER, 5);
    time.recall(50);
    assertSlots(0, 0, 5);
  }
}
