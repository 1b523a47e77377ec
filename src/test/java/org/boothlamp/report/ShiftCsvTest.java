package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShiftCsvTest {

  private static String table(String trainee) {
    ShiftRecords records =
        new ShiftRecords(List.of(run().trainee(trainee).build()), List.of(), List.of());
    ShiftReport report = ShiftReport.of(records, EveningShift.SPAN, "B-07", "");
    ShiftTime time =
        ShiftTime.of(records, EveningShift.SPAN, List.of(), EveningShift.SPAN.untilWallMillis());
    Glance glance = Glance.of(report, new Glance.Beside(time, List.of(), List.of()));
    return ShiftCsv.render(report, glance, Phrases.in(Language.ENGLISH));
  }

  @Test
  void shouldWriteTheEveningAsItWasLookedAt() {
    assertEquals(
        ReportResources.read("evening.csv"),
        ShiftCsv.render(
            EveningShift.report(), EveningShift.glance(), Phrases.in(Language.ENGLISH)));
  }

  @Test
  void shouldHaveAsManyFieldsInEveryRow() {
    String[] lines = table("T-04").split("\r\n", -1);
    assertEquals(4, lines.length, "names, trainee, run, and nothing after the last end");
    assertEquals("", lines[3]);
    int fields = lines[0].split(",", -1).length;
    assertEquals(fields, lines[1].split(",", -1).length - inQuotes(lines[1]));
    assertEquals(fields, lines[2].split(",", -1).length - inQuotes(lines[2]));
  }

  private static long inQuotes(String line) {
    boolean quoted = false;
    long commas = 0;
    for (char character : line.toCharArray()) {
      quoted ^= character == '"';
      commas += quoted && character == ',' ? 1 : 0;
    }
    return commas;
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@sum(A1)", "\t=1", "\r=1"})
  void shouldNotLetACodeBecomeAFormula(String code) {
    String line = table(code).split("\r\n")[1];
    assertTrue(line.startsWith("trainee,B-07,'"), line);
  }

  @Test
  void shouldQuoteWhatWouldEndAField() {
    assertTrue(table("a,\"b\"").contains("trainee,B-07,\"a,\"\"b\"\"\","));
    String line = table("a\r\nb\u202e").split("\r\n")[1];
    assertTrue(line.startsWith("trainee,B-07,a[U+000D][U+000A]b[U+202E],"), line);
  }

  @Test
  void shouldKeepALongCodeWhole() {
    String code = "T".repeat(10_000);
    assertTrue(table(code).contains("," + code + ","));
  }

  @Test
  void shouldLeaveEmptyWhatIsNotKnown() {
    CsvTable table = new CsvTable(List.of("a_s", "b_s", "c_s"));
    table.number("a_s", Double.NaN).number("b_s", 0.1 + 0.2).endRow();
    assertEquals("a_s,b_s,c_s\r\n,0.3,\r\n", table.toString());
    assertThrows(IllegalArgumentException.class, () -> table.count("d", 1));
    assertFalse(table.toString().contains("NaN"));
  }
}
