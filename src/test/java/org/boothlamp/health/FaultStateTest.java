package org.boothlamp.health;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class FaultStateTest {

  private final FaultState fault = new FaultState(3);
  private long slot;

  private void look(boolean seen, int slots) {
    for (int k = 0; k < slots; k++) {
      fault.look(seen, slot++);
    }
  }

  @Test
  void shouldBeActiveOnceItWasSeenLongEnoughInARow() {
    look(true, 2);
    look(false, 1);
    look(true, 2);
    assertFalse(fault.isActive());
    look(true, 1);
    assertTrue(fault.isActive());
    assertEquals(3, fault.onsetSlot());
  }

  @Test
  void shouldBridgeHalfASecondWithoutBeingSeen() {
    look(true, 5);
    look(false, 49);
    assertTrue(fault.isActive());
    look(true, 1);
    look(false, 49);
    assertTrue(fault.isActive());
    assertEquals(0, fault.onsetSlot(), "one fault");
    look(false, 1);
    assertFalse(fault.isActive());
    assertEquals(55, fault.endSlot(), "the last slot in which it was seen was 54");
  }

  @Test
  void shouldStayAsItIsWhileNothingCanBeTold() {
    look(true, 2);
    fault.keep(slot++);
    look(true, 2);
    assertFalse(fault.isActive());
    look(true, 1);
    for (int k = 0; k < 1_000; k++) {
      fault.keep(slot++);
    }
    assertTrue(fault.isActive());
    assertEquals(slot, fault.endSlot());
  }

  @Test
  void shouldEndAtOnceWhenWhatItWasAboutIsOver() {
    look(true, 5);
    fault.clear();
    assertFalse(fault.isActive());
    look(true, 2);
    assertFalse(fault.isActive());
  }
}
