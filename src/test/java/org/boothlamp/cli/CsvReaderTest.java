package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.cli.CsvReader.CsvException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** RFC 4180, section 2, rule by rule with its own examples. */
class CsvReaderTest {

  private static List<List<String>> fields(String text) throws CsvException {
    return CsvReader.read(text).stream().map(CsvReader.Row::fields).toList();
  }

  @Test
  void shouldReadEachRecordOnItsLineWithOrWithoutABreakAfterTheLast() throws CsvException {
    List<List<String>> expected =
        List.of(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
    assertEquals(expected, fields("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"));
    assertEquals(expected, fields("aaa,bbb,ccc\r\nzzz,yyy,xxx"));
    assertEquals(expected, fields("aaa,bbb,ccc\nzzz,yyy,xxx\n"));
  }

  @Test
  void shouldKeepBlanksAsPartOfAField() throws CsvException {
    assertEquals(List.of(List.of("aaa", " bbb ", "")), fields("aaa, bbb ,\r\n"));
  }

  @Test
  void shouldTakeQuotesOffAndAllowBreaksCommasAndDoubledQuotesInside() throws CsvException {
    assertEquals(
        List.of(List.of("aaa", "b\r\nbb", "ccc"), List.of("zzz", "yyy", "xxx")),
        fields("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"));
    assertEquals(List.of(List.of("aaa", "b\"bb", "ccc")), fields("\"aaa\",\"b\"\"bb\",\"ccc\""));
    assertEquals(List.of(List.of("1,5", "")), fields("\"1,5\",\"\""));
  }

  @Test
  void shouldKnowTheLineOnWhichARecordBegins() throws CsvException {
    List<CsvReader.Row> rows = CsvReader.read("a\r\n\"b\r\nb\"\r\n\r\nc\r\n");
    assertEquals(List.of(1, 2, 5), rows.stream().map(CsvReader.Row::line).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "a,b\"c | 2 | a quote stands inside a field",
        "a,\"bc | 2 | never closed",
        "\"a\"b,c | 2 | follows a closing quote"
      })
  void shouldSayWhichLineBreaksARule(String line, int number, String what) {
    CsvException broken =
        assertThrows(CsvException.class, () -> CsvReader.read("x,y\r\n" + line.strip() + "\r\n"));
    assertEquals(number, broken.line());
    assertTrue(broken.getMessage().contains(what), broken.getMessage());
  }

  @Test
  void shouldRefuseALineThatEndsWithCrAlone() {
    assertThrows(CsvException.class, () -> CsvReader.read("a\rb\r"));
  }
}
