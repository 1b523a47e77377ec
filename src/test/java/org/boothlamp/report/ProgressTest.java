package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class ProgressTest {

  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final ShiftSpan SPAN =
      ShiftSpan.days(LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 6), ZONE);
  private static final SteadyRule THREE_OF_NINETY = new SteadyRule("", "", 3, 0.9, 5);

  private static ZonedDateTime at(int day, int minute) {
    return ZonedDateTime.of(2026, 3, day, 8, minute, 0, 0, ZONE);
  }

  /** Runs of ten judged seconds, a minute apart, with these shares in the window. */
  private static List<RunRecord> runs(int day, double... shares) {
    List<RunRecord> runs = new ArrayList<>();
    for (int i = 0; i < shares.length; i++) {
      double green = 10 * shares[i];
      runs.add(run().at(at(day, i)).length(11).levels(green, 0, 10 - green, 1).build());
    }
    return runs;
  }

  private static PassProgress only(List<RunRecord> runs, SteadyRule... rules) {
    return Progress.of(runs, SPAN, List.of(rules)).trainees().get(0).passes().get(0);
  }

  @Test
  void shouldGoByDays() {
    List<RunRecord> runs = new ArrayList<>(runs(2, 0.2, 0.4));
    runs.addAll(runs(4, 0.9));
    PassProgress pass = only(runs);
    assertEquals(
        List.of(LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 4)),
        pass.days().stream().map(ProgressDay::day).toList());
    assertEquals(0.3, pass.days().get(0).figures().insideShare(), 1e-12);
    assertEquals(0.5, pass.total().insideShare(), 1e-12);
  }

  @Test
  void shouldCountEachRunAsOneTrial() {
    PassProgress pass = only(runs(2, 1, 1, 0.5, 0.5));
    assertEquals(4, pass.judgedRuns());
    assertEquals(WilsonInterval.of(0.75, 4), pass.interval());
  }

  @Test
  void shouldLeaveOutRunsThatNobodyJudgedAndTraineesThatNobodyKnows() {
    List<RunRecord> runs = new ArrayList<>(runs(2, 1));
    runs.add(run().at(at(2, 5)).levels(0, 0, 0, 10).build());
    runs.add(run().at(at(2, 6)).trainee("").build());
    Progress progress = Progress.of(runs, SPAN, List.of());
    assertEquals(1, progress.trainees().size());
    PassProgress pass = progress.trainees().get(0).passes().get(0);
    assertEquals(1, pass.judgedRuns());
    assertEquals(2, pass.total().runs());
  }

  @Test
  void shouldSayNothingOfATrendOrAShareThatIsNotThere() {
    assertNull(only(runs(2, 0.1, 0.2, 0.3, 0.4)).trend());
    List<RunRecord> unjudged = List.of(run().at(at(2, 0)).levels(0, 0, 0, 10).build());
    assertNull(only(unjudged).interval());
  }

  /** On a perfect line the slope is certain and the interval has no width. */
  @Test
  void shouldFindTheSlopeOfAPerfectLine() {
    Trend trend = only(runs(2, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6)).trend();
    assertEquals(1.0, trend.perTenRuns(), 1e-9);
    assertEquals(0, trend.halfWidth(), 1e-6);
    assertEquals(Trend.Direction.BETTER, trend.direction());
  }

  /**
   * By hand: slope 0.05 a run, residuals 0, 0.05, -0.1, 0.05, 0, so a sum of squares of 0.015 with
   * 3 degrees of freedom, Σ(x - x̄)² 10; t of 3 degrees at 97.5 % from any table.
   */
  @Test
  void shouldGiveTheIntervalOfTheSlopeByStudent() {
    Trend trend = only(runs(2, 0.5, 0.6, 0.5, 0.7, 0.7)).trend();
    assertEquals(0.5, trend.perTenRuns(), 1e-9);
    assertEquals(10 * 3.182446 * Math.sqrt(0.015 / 3 / 10), trend.halfWidth(), 1e-5);
    assertEquals(Trend.Direction.CANNOT_TELL, trend.direction());
  }

  @Test
  void shouldSayWorseOnlyWhereTheIntervalAllowsIt() {
    assertEquals(
        Trend.Direction.WORSE, only(runs(2, 1, 0.9, 0.8, 0.7, 0.6, 0.5)).trend().direction());
    assertEquals(
        Trend.Direction.CANNOT_TELL, only(runs(2, 0.9, 0.1, 0.8, 0.2, 0.9)).trend().direction());
  }

  @Test
  void shouldHaveNoVerdictWithoutTheSchoolsRule() {
    assertNull(only(runs(2, 1, 1, 1)).steady());
    assertFalse(ProgressText.render(progress(), 100, Colour.PLAIN).contains("steady"));
  }

  private static Progress progress(SteadyRule... rules) {
    return Progress.of(runs(2, 0.5, 0.9, 1, 1, 0.95), SPAN, List.of(rules));
  }

  @Test
  void shouldCountRunsInARowByTheSchoolsRule() {
    assertEquals(3, only(runs(2, 0.5, 0.9, 1, 0.95), THREE_OF_NINETY).steady().lastInARow());
    assertTrue(only(runs(2, 0.5, 0.9, 1, 0.95), THREE_OF_NINETY).steady().isMet());
    SteadyCount broken = only(runs(2, 1, 1, 1, 1, 0.89, 1), THREE_OF_NINETY).steady();
    assertEquals(1, broken.lastInARow());
    assertEquals(4, broken.longestInARow());
    assertFalse(broken.isMet());
  }

  @Test
  void shouldPassOverRunsThatAreTooShortToCount() {
    List<RunRecord> runs = new ArrayList<>(runs(2, 1, 1));
    runs.add(run().at(at(2, 5)).length(4).levels(0, 0, 3, 1).build());
    runs.add(run().at(at(2, 6)).levels(10, 0, 0, 1).build());
    assertEquals(3, only(runs, THREE_OF_NINETY).steady().lastInARow());
  }

  @Test
  void shouldTakeTheNarrowestRule() {
    SteadyRule forPass = new SteadyRule("S-3F-18", "fill", 2, 0.5, 0);
    SteadyRule forProcedure = new SteadyRule("S-3F-18", "", 4, 0.5, 0);
    SteadyRule forOther = new SteadyRule("M-TACK", "", 1, 0.5, 0);
    List<RunRecord> runs = runs(2, 1, 1);
    assertEquals(
        forPass, only(runs, THREE_OF_NINETY, forProcedure, forPass, forOther).steady().rule());
    assertEquals(forProcedure, only(runs, THREE_OF_NINETY, forProcedure).steady().rule());
    assertNull(only(runs, forOther).steady());
  }

  @Test
  void shouldSayInWordsWhatWasCounted() {
    String text = ProgressText.render(progress(THREE_OF_NINETY), 300, Colour.PLAIN);
    assertTrue(
        text.contains(
            "by the school's rule (3 runs in a row, each with 90.0 % or more of its judged time in the"
                + " window, runs judged for less than 5.0 s passed over): steady enough to try the"
                + " test, 4 in a row now, 4 at most."),
        text);
    assertTrue(text.contains("in window 87.0 %, 95 % from 43.5 % to 98.3 % (5 judged runs)"), text);
    assertTrue(text.contains(TextReport.WHAT_IT_IS_NOT));
  }

  @Test
  void shouldBeReadableByPrograms() throws IOException {
    StringWriter out = new StringWriter();
    ProgressJson.write(progress(THREE_OF_NINETY), out);
    List<JsonNode> lines = new ArrayList<>();
    for (String line : out.toString().split("\n")) {
      lines.add(new ObjectMapper().readTree(line));
    }
    assertEquals(
        List.of("progress", "progress-pass", "progress-day"),
        lines.stream().map(line -> line.get("kind").asText()).toList());
    JsonNode pass = lines.get(1);
    assertEquals(0.87, pass.get("in_window_share").asDouble(), 1e-9);
    assertEquals(4, pass.get("in_a_row").asInt());
    assertEquals(
        WilsonInterval.of(0.87, 5).low(), pass.get("in_window_share_low").asDouble(), 1e-6);
    double mean = DoubleStream.of(0.5, 0.9, 1, 1, 0.95).average().orElseThrow();
    assertEquals(mean, lines.get(2).get("in_window_share").asDouble(), 1e-9);
  }
}
