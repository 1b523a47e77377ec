package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class JsonReportTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @Test
  void shouldWriteAnEveningAsOneObjectALine() throws IOException {
    assertEquals(parse(TextReportTest.resource("evening.jsonl")), lines(EveningShift.report()));
  }

  @Test
  void shouldWriteEachKindInTurn() throws IOException {
    assertEquals(
        List.of("shift", "trainee", "run", "touch", "event"),
        lines(EveningShift.report()).stream()
            .map(line -> line.get("kind").asText())
            .distinct()
            .toList());
  }

  @Test
  void shouldWriteNullWhereSomethingIsNotKnown() throws IOException {
    RunRecord run =
        run()
            .trainee("")
            .noProcedure()
            .means(Double.NaN, Double.POSITIVE_INFINITY)
            .shortCircuits(-1)
            .build();
    ShiftReport report =
        ShiftReport.of(
            new ShiftRecords(List.of(run), List.of(), List.of()), EveningShift.SPAN, "", "");
    JsonNode line = lines(report).get(3);
    for (String field :
        List.of(
            "trainee",
            "procedure",
            "pass",
            "mean_amps",
            "mean_volts",
            "in_window_share",
            "short_circuits",
            "short_circuits_per_s")) {
      assertTrue(line.get(field).isNull(), field + " in " + line);
    }
  }

  @Test
  void shouldWriteOnlyTheShiftWhenNothingHappened() throws IOException {
    List<JsonNode> lines =
        lines(
            ShiftReport.of(
                new ShiftRecords(List.of(), List.of(), List.of()),
                EveningShift.SPAN,
                "B-07",
                "Evening class"));
    assertEquals(1, lines.size());
    assertEquals(0, lines.get(0).get("runs").asInt());
    assertTrue(lines.get(0).get("in_window_share").isNull());
  }

  @Test
  void shouldLeaveTheWriterOpen() throws IOException {
    boolean[] closed = {false};
    StringWriter writer =
        new StringWriter() {
          @Override
          public void close() {
            closed[0] = true;
          }
        };
    JsonReport.write(EveningShift.report(), writer);
    assertFalse(closed[0]);
    assertTrue(writer.toString().endsWith("}\n"));
  }

  private static List<JsonNode> lines(ShiftReport report) throws IOException {
    StringWriter writer = new StringWriter();
    JsonReport.write(report, writer);
    return parse(writer.toString());
  }

  static List<JsonNode> parse(String text) throws IOException {
    List<JsonNode> nodes = new ArrayList<>();
    for (String line : text.split("\n")) {
      nodes.add(MAPPER.readTree(line));
    }
    return nodes;
  }
}
