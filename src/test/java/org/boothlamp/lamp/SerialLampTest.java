package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class SerialLampTest {

  private record Frame(int counter, Signal signal) {}

  private final List<Frame> frames = new ArrayList<>();
  private final HandTurnedClock clock = new HandTurnedClock();
  private final SerialLamp serial = new SerialLamp(this::receive, clock);

  private void receive(int counter, Signal signal) {
    frames.add(new Frame(counter, signal));
  }

  @Test
  void shouldSendAFrameEveryQuarterOfASecondAndAtEachChange() throws IOException {
    for (int millis = 0; millis < 1_000; millis += 50) {
      serial.apply(millis < 600 ? Signal.GREEN : Signal.RED, 0, 0);
      clock.advanceMillis(50);
    }
    assertEquals(
        List.of(
            new Frame(0, Signal.GREEN),
            new Frame(1, Signal.GREEN),
            new Frame(2, Signal.GREEN),
            new Frame(3, Signal.RED),
            new Frame(4, Signal.RED)),
        frames);
  }

  @Test
  void shouldCountFramesInOneByte() throws IOException {
    for (int k = 0; k < 258; k++) {
      serial.apply(k % 2 == 0 ? Signal.GREEN : Signal.RED, 0, 0);
    }
    assertEquals(255, frames.get(255).counter());
    assertEquals(0, frames.get(256).counter());
    assertEquals(1, frames.get(257).counter());
  }

  @Test
  void shouldSendAgainWhatTheLineDidNotTake() throws IOException {
    boolean[] unplugged = {true};
    SerialLamp lamp =
        new SerialLamp(
            (counter, signal) -> {
              if (unplugged[0]) {
                throw new IOException("the line is not open");
              }
              receive(counter, signal);
            },
            clock);
    assertThrows(IOException.class, () -> lamp.apply(Signal.RED, 0, 0));
    unplugged[0] = false;
    lamp.apply(Signal.RED, 0, 0);
    assertEquals(List.of(new Frame(0, Signal.RED)), frames);
  }

  @Nested
  class Contract extends WordOutputContract {

    @Override
    protected LampOutput open(HandTurnedClock lampClock) {
      return new SerialLamp(SerialLampTest.this::receive, lampClock);
    }

    @Override
    protected Signal told() {
      return frames.get(frames.size() - 1).signal();
    }
  }
}
