package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.charset.StandardCharsets;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Codes over a line, as readers send them. */
class SerialBadgesTest {

  private final MemoryLine line = new MemoryLine();
  private final HandTurnedClock clock = new HandTurnedClock();
  private final SerialBadges badges = new SerialBadges(line, BadgeEnding.LINE, clock);

  private void send(String text) {
    line.send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0004711\r", "0004711\n", "0004711\r\n", "\u00020004711\r\n\u0003", " 000 4711\r"})
  void shouldReadACodeHoweverItsLineEnds(String sent) {
    send(sent);
    assertEquals("0004711", badges.next(0));
    assertNull(badges.next(0));
  }

  @Test
  void shouldReadACodeThatComesInPieces() {
    send("00047");
    assertNull(badges.next(0));
    clock.advanceMillis(1_900);
    send("11\r");
    assertEquals("0004711", badges.next(0));
  }

  @Test
  void shouldReadTwoCodesThatComeAtOnce() {
    send("T-04\r\nT-05\r\n");
    assertEquals("T-04", badges.next(0));
    assertEquals("T-05", badges.next(0));
    assertNull(badges.next(0));
  }

  @Test
  void shouldDropTheRestOfABadgeThatStoppedInTheMiddle() {
    send("00047");
    assertNull(badges.next(0));
    clock.advanceMillis(2_100);
    send("0004712\r");
    assertEquals("0004712", badges.next(0));
  }

  @Test
  void shouldDropTheRestOfABadgeThatWasReadBeforeTheCableBroke() {
    send("00047");
    assertNull(badges.next(0));
    line.cut();
    assertNull(badges.next(0));
    assertNotNull(badges.failure());
    line.mend();
    send("0004712\r");
    assertEquals("0004712", badges.next(0));
    assertNull(badges.failure());
  }

  @Test
  void shouldTakeNothingLongerThanABadge() {
    send("1".repeat(65) + "\r" + "2".repeat(64) + "\r");
    assertEquals("2".repeat(64), badges.next(0));
  }

  @Test
  void shouldEndACodeAtEndOfText() {
    SerialBadges other = new SerialBadges(line, BadgeEnding.ETX, clock);
    send("\u000200047\r\n11\u0003");
    assertEquals("0004711", other.next(0));
  }
}
