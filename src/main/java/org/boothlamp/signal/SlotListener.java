package org.boothlamp.signal;

/** Takes slots in order, on the thread that delivers the pairs. */
@FunctionalInterface
public interface SlotListener {

  /** Called once a slot is complete; {@code slot} is valid only during the call. */
  void onSlot(Slot slot);
}
