package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.tomlj.Toml;

class LiteralTest {

  @Test
  void shouldShowNumbersAsAPersonWritesThem() {
    assertEquals("4000000", Literal.ofNumber(4_000_000));
    assertEquals("0.05", Literal.ofNumber(0.05));
    assertEquals("0", Literal.ofNumber(-0.0));
    assertEquals("NaN", Literal.ofNumber(Double.NaN));
  }

  @Test
  void shouldShowTextInQuotesWithoutItsControlCharacters() {
    assertEquals("\"Büro\"", Literal.of("Büro"));
    assertEquals("\"a\\\"b\"", Literal.of("a\"b"));
    assertEquals("\"a\uFFFD[2J\"", Literal.of("a\u001b[2J"));
  }

  @Test
  void shouldCutWhatIsTooLongToRead() {
    assertEquals("\"" + "x".repeat(60) + "...\"", Literal.of("x".repeat(100)));
  }

  @Test
  void shouldShowListsAndSections() {
    assertEquals("[1, 2.5, [\"a\"]]", Literal.of(Toml.parse("a = [1, 2.5, [\"a\"]]").get("a")));
    assertEquals("a section", Literal.of(Toml.parse("a = { b = 1 }").get("a")));
  }
}
