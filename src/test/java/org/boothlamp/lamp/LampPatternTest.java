package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.stream.Stream;
import org.boothlamp.judging.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class LampPatternTest {

  private static final long MILLI = 1_000_000L;
  private static final int OFF = 0;
  private static final int G = LampPattern.GREEN;
  private static final int A = LampPattern.AMBER;
  private static final int R = LampPattern.RED;

  private final LampPattern steady = new LampPattern(RedStyle.STEADY);
  private final LampPattern pulsing = new LampPattern(RedStyle.PULSING);

  private static int lightsAt(LampPattern pattern, Signal signal, long millis) {
    return pattern.lights(signal, millis * MILLI);
  }

  @ParameterizedTest
  @EnumSource(RedStyle.class)
  void shouldHoldTheSteadySignals(RedStyle redStyle) {
    LampPattern pattern = new LampPattern(redStyle);
    for (long millis = 0; millis < 10_000; millis += 7) {
      assertEquals(OFF, lightsAt(pattern, Signal.DARK, millis));
      assertEquals(A + G, lightsAt(pattern, Signal.SETTLING, millis));
      assertEquals(G, lightsAt(pattern, Signal.GREEN, millis));
      assertEquals(A, lightsAt(pattern, Signal.AMBER, millis));
    }
  }

  @Test
  void shouldBlinkGreenForATenthOfASecondEveryFourSecondsWhenIdle() {
    assertEquals(G, lightsAt(steady, Signal.IDLE, 0));
    assertEquals(G, lightsAt(steady, Signal.IDLE, 99));
    assertEquals(OFF, lightsAt(steady, Signal.IDLE, 100));
    assertEquals(OFF, lightsAt(steady, Signal.IDLE, 3_999));
    assertEquals(G, lightsAt(steady, Signal.IDLE, 4_000));
    assertEquals(OFF, lightsAt(steady, Signal.IDLE, 4_100));
  }

  @Test
  void shouldHoldRedUnlessAskedToPulse() {
    assertEquals(R, lightsAt(steady, Signal.RED, 750));
    assertEquals(R, lightsAt(pulsing, Signal.RED, 0));
    assertEquals(R, lightsAt(pulsing, Signal.RED, 499));
    assertEquals(OFF, lightsAt(pulsing, Signal.RED, 500));
    assertEquals(OFF, lightsAt(pulsing, Signal.RED, 999));
    assertEquals(R, lightsAt(pulsing, Signal.RED, 1_000));
  }

  @Test
  void shouldAlternateRedAndAmberOnceASecondInFault() {
    assertEquals(R, lightsAt(steady, Signal.FAULT, 0));
    assertEquals(R, lightsAt(steady, Signal.FAULT, 499));
    assertEquals(A, lightsAt(steady, Signal.FAULT, 500));
    assertEquals(A, lightsAt(steady, Signal.FAULT, 999));
    assertEquals(R, lightsAt(steady, Signal.FAULT, 1_000));
  }

  static Stream<Arguments> everySignalAndStyle() {
    return Stream.of(Signal.values())
        .flatMap(s -> Stream.of(RedStyle.values()).map(style -> Arguments.of(s, style)));
  }

  /** At most three flashes in any one second: WCAG 2.x, success criterion 2.3.1. */
  @ParameterizedTest
  @MethodSource("everySignalAndStyle")
  void shouldNotFlashMoreThanThreeTimesInAnySecond(Signal signal, RedStyle redStyle) {
    LampPattern pattern = new LampPattern(redStyle);
    for (int mask : new int[] {G, A, R, G + A + R}) {
      assertTrue(mostFlashesInASecond(pattern, signal, mask) <= 3);
    }
  }

  private static int mostFlashesInASecond(LampPattern pattern, Signal signal, int mask) {
    Deque<Long> flashes = new ArrayDeque<>();
    int most = 0;
    boolean wasLit = false;
    for (long millis = 0; millis < 20_000; millis++) {
      boolean isLit = (lightsAt(pattern, signal, millis) & mask) != 0;
      if (isLit && !wasLit) {
        flashes.add(millis);
      }
      wasLit = isLit;
      while (!flashes.isEmpty() && flashes.peek() <= millis - 1_000) {
        flashes.remove();
      }
      most = Math.max(most, flashes.size());
    }
    return most;
  }

  @ParameterizedTest
  @MethodSource("everySignalAndStyle")
  void shouldSayWhenTheLightsChangeNext(Signal signal, RedStyle redStyle) {
    LampPattern pattern = new LampPattern(redStyle);
    for (long millis = 0; millis < 9_000; millis++) {
      long elapsed = millis * MILLI;
      int lights = pattern.lights(signal, elapsed);
      long toChange = pattern.nanosToChange(signal, elapsed);
      if (toChange == Long.MAX_VALUE) {
        assertEquals(lights, pattern.lights(signal, elapsed + MILLI));
      } else {
        assertEquals(lights, pattern.lights(signal, elapsed + toChange - 1));
        assertTrue(lights != pattern.lights(signal, elapsed + toChange));
      }
    }
  }
}
