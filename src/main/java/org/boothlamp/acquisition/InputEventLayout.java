package org.boothlamp.acquisition;

import java.nio.ByteBuffer;

/**
 * Where the fields of the kernel's {@code struct input_event} lie (linux/input.h): two words of the
 * machine for the time, then type and code of 16 bits and a value of 32, in the machine's byte
 * order.
 */
enum InputEventLayout {
  /** Of a program with 32 bits, whatever the kernel has. */
  BITS_32(16),
  BITS_64(24);

  private static final int CODE = 2;
  private static final int VALUE = 4;

  private final int bytes;

  InputEventLayout(int bytes) {
    this.bytes = bytes;
  }

  /** Length of an event. */
  int bytes() {
    return bytes;
  }

  int type(ByteBuffer events, int index) {
    return events.getShort(fields(index)) & 0xFFFF;
  }

  int code(ByteBuffer events, int index) {
    return events.getShort(fields(index) + CODE) & 0xFFFF;
  }

  int value(ByteBuffer events, int index) {
    return events.getInt(fields(index) + VALUE);
  }

  private int fields(int index) {
    return index * bytes + bytes - 8;
  }
}
