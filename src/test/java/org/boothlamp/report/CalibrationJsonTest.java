package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationRecord;
import org.junit.jupiter.api.Test;

class CalibrationJsonTest {

  private static List<JsonNode> objects(CalibrationSheet sheet) throws IOException {
    StringWriter out = new StringWriter();
    CalibrationJson.write(sheet, out);
    List<JsonNode> objects = new ArrayList<>();
    for (String line : out.toString().lines().toList()) {
      objects.add(new ObjectMapper().readTree(line));
    }
    return objects;
  }

  private static List<JsonNode> of(String kind, List<JsonNode> objects) {
    return objects.stream().filter(object -> object.get("kind").asText().equals(kind)).toList();
  }

  @Test
  void shouldWriteTheLinesAsTheyWereLookedAt() throws IOException {
    StringWriter out = new StringWriter();
    CalibrationJson.write(CalibrationPageResources.sheet("accepted"), out);
    assertEquals(CalibrationPageResources.read("accepted.jsonl"), out.toString());
  }

  @Test
  void shouldTellEveryKindOnce() throws IOException {
    List<JsonNode> objects = objects(CalibrationPageResources.sheet("withdrawn"));
    for (String kind :
        List.of(
            "calibration", "meter", "fit", "verdict", "finish", "withdrawal", "control-chart")) {
      assertEquals(1, of(kind, objects).size(), kind);
    }
    assertEquals(13, of("point", objects).size());
    assertEquals(3, of("budget", objects).size());
    assertEquals(21, of("budget-line", objects).size());
    assertEquals(14, of("check", objects).size());
    assertEquals(List.of(), of("refusal", objects));
    assertEquals(List.of(), of("disagreement", objects));
  }

  @Test
  void shouldKeepAllDigitsOfWhatWasSigned() throws IOException {
    CalibrationRecord record = CalibrationSamples.accepted();
    JsonNode finish = of("finish", objects(CalibrationSamples.bare(record))).get(0);
    assertEquals(
        record.finish().scale().unitsPerCount(), finish.get("amps_per_count").asDouble(), 0);
    assertEquals(
        record.finish().uncertainty().constant(),
        finish.get("expanded_constant_amps").asDouble(),
        0);
  }

  @Test
  void shouldAddUpTheBudget() throws IOException {
    List<JsonNode> objects = objects(CalibrationPageResources.sheet("accepted"));
    JsonNode full = of("budget", objects).get(2);
    double squares =
        of("budget-line", objects).stream()
            .filter(line -> line.get("reading_amps").equals(full.get("reading_amps")))
            .mapToDouble(line -> Math.pow(line.get("standard_uncertainty_amps").asDouble(), 2))
            .sum();
    assertEquals(full.get("combined_amps").asDouble(), Math.sqrt(squares), 1e-12);
  }

  @Test
  void shouldGiveReasonsAndNullsForARefusedOne() throws IOException {
    List<JsonNode> objects = objects(CalibrationPageResources.sheet("refused"));
    assertEquals("curved", of("refusal", objects).get(0).get("reason").asText());
    JsonNode finish = of("finish", objects).get(0);
    assertEquals("refused", finish.get("ending").asText());
    assertTrue(finish.path("next_due").isMissingNode());
    List<JsonNode> early =
        objects(
            CalibrationSamples.bare(
                CalibrationSamples.ended(
                    4,
                    CalibrationSamples.accepted().head(),
                    List.of(CalibrationSamples.overload()),
                    null)));
    JsonNode verdict = of("verdict", early).get(0);
    assertTrue(verdict.get("as_found").isNull());
    assertTrue(verdict.get("test_uncertainty_ratio").isNull());
    assertEquals(List.of(), of("fit", early));
  }

  @Test
  void shouldSayWhereRecordAndRecomputationPart() throws IOException {
    List<JsonNode> objects = objects(CalibrationSamples.bare(CalibrationSamples.tampered()));
    assertEquals(1, of("disagreement", objects).size());
  }
}
