package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class VisibleTextTest {

  @Test
  void shouldLeaveWhatCanBeSeen() {
    String seen = "Zählwerk <№ 5> & \"größer\" 電流計 שלום 😀";
    assertEquals(seen, VisibleText.of(seen));
  }

  @Test
  void shouldWriteOutWhatCannotBeSeen() {
    assertEquals(
        "[U+0000][U+001B][U+000A][U+0085][U+200B][U+202E][U+2066][U+FEFF][U+2028]",
        VisibleText.of("\u0000\u001b\n\u0085\u200b\u202e\u2066\ufeff\u2028"));
  }

  @Test
  void shouldWriteOutHalvesAndWhatIsNoCharacter() {
    assertEquals("a[U+D83D]b[U+FFFF][U+10FFFF]", VisibleText.of("a\ud83db\uffff\udbff\udfff"));
  }

  @Test
  void shouldTakeNothingForNothing() {
    assertEquals("", VisibleText.of(null));
  }
}
