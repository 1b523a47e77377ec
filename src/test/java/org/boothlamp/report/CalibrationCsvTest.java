package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationCsvTest {

  /** Reads a table as RFC 4180 says, lines ended by CR LF. */
  private static List<List<String>> table(String csv) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < csv.length(); i++) {
      char c = csv.charAt(i);
      boolean twice = c == '"' && quoted && i + 1 < csv.length() && csv.charAt(i + 1) == '"';
      if (twice) {
        field.append(c);
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (quoted || c != ',' && c != '\r' && c != '\n') {
        field.append(c);
      } else if (c != '\r') {
        row.add(field.toString());
        field.setLength(0);
        if (c == '\n') {
          rows.add(row);
          row = new ArrayList<>();
        }
      }
    }
    assertTrue(row.isEmpty() && field.isEmpty(), "the last line is ended too");
    return rows;
  }

  private static String value(List<List<String>> rows, String name) {
    return rows.stream().filter(row -> row.get(1).equals(name)).findFirst().orElseThrow().get(2);
  }

  @Test
  void shouldWriteTheTableAsItWasLookedAt() {
    assertEquals(
        CalibrationPageResources.read("accepted.csv"),
        CalibrationCsv.render(CalibrationPageResources.sheet("accepted")).replace("\r\n", "\n"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"accepted", "refused", "withdrawn"})
  void shouldHaveAsManyFieldsInEveryLine(String name) {
    String csv = CalibrationCsv.render(CalibrationPageResources.sheet(name));
    Set<Integer> widths = table(csv).stream().map(List::size).collect(Collectors.toSet());
    assertEquals(Set.of(18), widths);
    assertTrue(csv.endsWith("\r\n"));
    assertEquals(csv.lines().count(), csv.split("\r\n", -1).length - 1);
  }

  @Test
  void shouldKeepEveryRawPoint() {
    CalibrationRecord record = CalibrationSamples.accepted();
    List<List<String>> rows = table(CalibrationCsv.render(CalibrationSamples.bare(record)));
    for (int i = 0; i < record.points().size(); i++) {
      CalibrationPoint point = record.points().get(i);
      List<String> row = rows.get(1 + i);
      assertEquals(Integer.toString(i + 1), row.get(1));
      assertEquals(point.meanCounts(), Double.parseDouble(row.get(6)), 0);
      assertEquals(point.reference(), Double.parseDouble(row.get(11)), 0);
    }
    assertEquals("load bank was still warming up", rows.get(4).get(17));
  }

  @Test
  void shouldKeepAllDigitsOfWhatWasSigned() {
    CalibrationRecord record = CalibrationSamples.accepted();
    List<List<String>> rows = table(CalibrationCsv.render(CalibrationSamples.bare(record)));
    assertEquals(
        record.finish().scale().unitsPerCount(),
        Double.parseDouble(value(rows, "scale_per_count")),
        0);
    assertEquals("2027-03-02", value(rows, "next_due"));
  }

  @Test
  void shouldQuoteFreeTextAndNeverStartAFormula() {
    CalibrationRecord record =
        CalibrationSamples.ended(
            4,
            CalibrationSamples.head("=1+2", CalibrationSamples.meter("a, \"b\"\r\nc")),
            CalibrationSamples.soundPoints(),
            null);
    List<List<String>> rows = table(CalibrationCsv.render(CalibrationSamples.bare(record)));
    assertEquals("'=1+2", value(rows, "technician"));
    assertEquals("a, \"b\"[U+000D][U+000A]c", value(rows, "meter"));
  }
}
