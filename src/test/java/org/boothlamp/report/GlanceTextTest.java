package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.Test;

/** The glance as text and JSON. */
class GlanceTextTest {

  @Test
  void shouldWriteTheEveningWithWhatToLookAt() {
    assertEquals(
        ReportResources.read("evening-glance.txt"),
        TextReport.render(
            EveningShift.report(), EveningShift.glance(), 80, Colour.PLAIN, Units.METRIC));
  }

  @Test
  void shouldKeepToThePage() {
    TextReport.render(EveningShift.report(), EveningShift.glance(), 80, Colour.PLAIN, Units.METRIC)
        .lines()
        .forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void shouldWriteTheEveningForPrograms() throws IOException {
    StringWriter writer = new StringWriter();
    GlanceJson.write(EveningShift.glance(), writer);
    assertEquals(ReportResources.read("evening-glance.jsonl"), writer.toString());
  }
}
