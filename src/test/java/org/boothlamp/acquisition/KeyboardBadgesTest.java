package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Codes typed like a keyboard: the kernel's events lie in a file. */
class KeyboardBadgesTest {

  private static final int CAPS_LOCK = 58;
  private static final int KEYPAD_7 = 71;
  private static final int KEYPAD_ENTER = 96;

  @TempDir Path folder;
  private final HandTurnedClock clock = new HandTurnedClock();

  private List<String> read(InputEventLayout layout, TypedKeys keys) throws Exception {
    Path device = Files.write(folder.resolve("event0"), keys.bytes());
    List<String> codes = new ArrayList<>();
    try (KeyboardBadges badges = new KeyboardBadges(device.toString(), layout, clock)) {
      while (badges.failure() == null) {
        String code = badges.next(0);
        if (code != null) {
          codes.add(code);
        }
      }
      assertTrue(badges.failure().getMessage().contains("is gone"));
    }
    return codes;
  }

  private List<String> read(TypedKeys keys) throws Exception {
    return read(InputEventLayout.BITS_64, keys);
  }

  private static TypedKeys keys() {
    return new TypedKeys(InputEventLayout.BITS_64);
  }

  @ParameterizedTest
  @EnumSource
  void shouldReadWhatIsTypedUntilEnter(InputEventLayout layout) throws Exception {
    TypedKeys keys = new TypedKeys(layout).type("0014710").type("T-04").type("tazmp.1_A");
    assertEquals(List.of("0014710", "T-04", "tazmp.1_A"), read(layout, keys));
  }

  @Test
  void shouldReadTheKeypadToo() throws Exception {
    assertEquals(List.of("7"), read(keys().press(KEYPAD_7).press(KEYPAD_ENTER)));
  }

  @Test
  void shouldPassOverKeysThatTypeNothingAndKeysThatAreHeld() throws Exception {
    TypedKeys keys = keys().press(CAPS_LOCK).event(1, 2, 1).event(1, 2, 2).event(1, 2, 2);
    assertEquals(List.of("14"), read(keys.event(1, 2, 0).type("4")));
  }

  @Test
  void shouldDropACodeOfWhichTheKernelLostKeys() throws Exception {
    int dropped = 3;
    TypedKeys keys = keys().event(1, 42, 1).press(20).event(0, dropped, 0).type("a4");
    assertEquals(List.of("a4"), read(keys));
  }

  @Test
  void shouldPassOverEnterAlone() throws Exception {
    assertEquals(List.of("7"), read(keys().type("").type("7")));
  }

  @Test
  void shouldSayThatTheDeviceIsNotThereAndReadItOnceItIs() throws Exception {
    Path device = folder.resolve("event0");
    try (KeyboardBadges badges =
        new KeyboardBadges(device.toString(), InputEventLayout.BITS_64, clock)) {
      assertNull(badges.next(0));
      String why = badges.failure().getMessage();
      assertTrue(why.contains("no such input device; plug the badge reader in"), why);
      Files.write(device, keys().type("T-04").bytes());
      assertNull(badges.next(0));
      clock.advanceMillis(500);
      assertEquals("T-04", badges.next(0));
      assertNull(badges.failure());
    }
  }
}
