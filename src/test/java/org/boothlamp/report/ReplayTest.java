package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.junit.jupiter.api.Test;

class ReplayTest {

  /** Two runs, two touches around the first, a fault in the second, an event that is no fault. */
  private static final Replay REPLAY =
      new Replay(
          "two-runs",
          60.25,
          "S-3F-18",
          "fill",
          new ShiftRecords(
              List.of(
                  run()
                      .trainee("")
                      .startSeconds(8.05)
                      .length(14)
                      .means(113.3, 21.28)
                      .energy(33_627)
                      .shortCircuits(61)
                      .levels(10, 1, 2, 1)
                      .excursion(Quantity.VOLTS, Side.HIGH, 4.5, 2, 28.94)
                      .uncalibrated()
                      .build(),
                  run()
                      .trainee("")
                      .startSeconds(30)
                      .length(10)
                      .levels(4, 0, 0, 1)
                      .fault(5)
                      .shortCircuits(-1)
                      .uncalibrated()
                      .end("stopped")
                      .build()),
              List.of(
                  new TouchRecord("", 0, 5.2, 0.1, false), new TouchRecord("", 0, 25, 1.5, true)),
              List.of(
                  new EventRecord("lost pairs", false, 0, 31, 0, 500, ""),
                  new EventRecord("no samples", true, 0, 35, Double.NaN, 0, ""))));

  @Test
  void shouldTellSegmentsTouchesAndFaultsInOrderOfTime() throws IOException {
    List<JsonNode> lines = json(REPLAY);
    assertEquals(
        List.of("touch", "segment", "touch", "segment", "fault", "summary"),
        lines.stream().map(line -> line.get("kind").asText()).toList());
  }

  @Test
  void shouldWriteASegmentWithTheFieldsPromised() throws IOException {
    JsonNode segment = json(REPLAY).get(1);
    List<String> fields = new ArrayList<>();
    segment.fieldNames().forEachRemaining(fields::add);
    assertEquals(
        List.of(
            "kind",
            "start_s",
            "end_s",
            "mean_amps",
            "mean_volts",
            "rms_amps",
            "rms_volts",
            "energy_j",
            "mean_power_w",
            "polarity",
            "short_circuits",
            "arc_outs",
            "green_s",
            "amber_s",
            "red_s",
            "settling_s",
            "excursions",
            "fault_s",
            "missing_s",
            "calibrated",
            "end"),
        fields);
  }

  @Test
  void shouldCountSecondsFromTheStartOfTheRecording() throws IOException {
    List<JsonNode> lines = json(REPLAY);
    assertEquals(
        JsonReportTest.parse(
            """
            {"kind": "touch", "start_s": 5.2, "end_s": 5.3, "stuck": false}
            {"kind": "touch", "start_s": 25.0, "end_s": 26.5, "stuck": true}
            {"kind": "fault", "start_s": 35.0, "end_s": null, "what": "no samples"}
            """),
        List.of(lines.get(0), lines.get(2), lines.get(4)));
    JsonNode segment = lines.get(1);
    assertEquals(8.05, segment.get("start_s").asDouble());
    assertEquals(22.05, segment.get("end_s").asDouble());
    // 4.5 s into a run that starts at 8.05 s, for 2 s
    assertEquals(
        JsonReportTest.parse(
                """
                [{"quantity":"volts","side":"high","start_s":12.55,"end_s":14.55,"worst":28.94}]
                """)
            .get(0),
        segment.get("excursions"));
    assertEquals(61, segment.get("short_circuits").asInt());
    assertTrue(lines.get(3).get("short_circuits").isNull(), "not measured");
  }

  @Test
  void shouldSumUpAtTheEnd() throws IOException {
    // inside 10 + 1 + 4 = 15 of 17 s judged
    assertEquals(
        JsonReportTest.parse(
                """
                {"kind":"summary","recording":"two-runs","length_s":60.25,"segments":2,\
                "touches":2,"arc_s":24.0,"green_s":14.0,"amber_s":1.0,"red_s":2.0,\
                "settling_s":2.0,"procedure":"S-3F-18","pass":"fill","in_window_share":0.882353,\
                "energy_j":57827.0,"fault_s":5.0,"missing_s":0.0,"faults":1,\
                "other_events":[{"start_s":31.0,"what":"lost pairs","count":500}]}
                """)
            .get(0),
        json(REPLAY).get(5));
  }

  @Test
  void shouldSumUpARecordingInWhichNothingWasWelded() throws IOException {
    Replay silent =
        new Replay("silence", 5, "", "", new ShiftRecords(List.of(), List.of(), List.of()));
    JsonNode summary = json(silent).get(0);
    assertEquals(0, summary.get("segments").asInt());
    assertTrue(summary.get("procedure").isNull());
    assertEquals(
        """
        silence
        5.0 s, judged by no procedure

          start, s    length     amps       volts       in window   energy       shorts

        0 segments, 0 touches; 0.0 s of arc: 0.0 s green, 0.0 s amber, 0.0 s red, 0.0 s
          not judged; in window not judged.
        """,
        ReplayText.render(silent, 80, Colour.PLAIN));
  }

  @Test
  void shouldTellAReplayAsAPersonReadsIt() throws IOException {
    assertEquals(
        TextReportTest.resource("replay.txt"), ReplayText.render(REPLAY, 80, Colour.PLAIN));
  }

  @Test
  void shouldSayTheSameWithColourAsWithout() {
    assertEquals(
        ReplayText.render(REPLAY, 80, Colour.PLAIN),
        ReplayText.render(REPLAY, 80, Colour.ANSI).replaceAll("\u001b\\[[0-9]+m", ""));
  }

  private static List<JsonNode> json(Replay replay) throws IOException {
    StringWriter writer = new StringWriter();
    ReplayJson.write(replay, writer);
    return JsonReportTest.parse(writer.toString());
  }
}
