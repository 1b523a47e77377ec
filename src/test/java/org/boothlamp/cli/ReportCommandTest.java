package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report from a log that a writer made. */
class ReportCommandTest {

  private static final LocalDate DAY =
      LocalDate.ofInstant(
          Instant.ofEpochMilli(LogEntries.FIRST_WALL_MILLIS), ZoneId.systemDefault());

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void weld() {
    booth = new BoothFolder(folder);
    booth.write();
    LogQueue queue = new LogQueue();
    BoothLogWriter writer =
        new BoothLogWriter(
            BoothLog.open(booth.log()),
            BoothFolder.BOOTH_ID,
            queue,
            LogClocks.system(),
            signIn -> {});
    for (String trainee : List.of("T-04", "T-11")) {
      double start = trainee.equals("T-04") ? 10 : 60;
      queue.offer(LogEntries.started(start, trainee));
      queue.offer(LogEntries.point(start, 1_112, 2_300, Signal.GREEN));
      queue.offer(LogEntries.ended(start, 30, SegmentEnd.ARC_OFF));
    }
    writer.close();
  }

  private CommandRun report(Object... more) {
    Object[] arguments = new Object[more.length + 3];
    arguments[0] = "report";
    arguments[1] = "--settings";
    arguments[2] = booth.settings();
    System.arraycopy(more, 0, arguments, 3, more.length);
    return CommandRun.of(arguments);
  }

  @Test
  void shouldReportADayForAPerson() {
    String text = report(DAY).exits(0).out();
    assertTrue(text.contains("Booth B-07, " + DAY), text);
    assertTrue(text.contains("2 trainees, 2 runs"), text);
    assertTrue(text.contains("\nT-04 "), text);
    assertTrue(text.contains("no safety device"), text);
    assertFalse(text.contains("\u001B["), text);
  }

  @Test
  void shouldColourTheReportOnATerminal() {
    String text = CommandRun.onScreen("report", DAY, "--log", booth.log()).exits(0).out();
    assertTrue(text.contains("\u001B["), text);
  }

  @Test
  void shouldReportADayForAProgram() {
    List<JsonNode> runs = report(DAY, "--format", "json").exits(0).objects("run");
    assertEquals(2, runs.size());
    assertEquals("T-04", runs.get(0).get("trainee").asText());
    assertEquals(1, report(DAY, "--format", "json").objects("shift").size());
  }

  @Test
  void shouldReportOneTrainee() {
    List<JsonNode> runs =
        report(DAY, "--trainee", "T-11", "--format", "json").exits(0).objects("run");
    assertEquals(1, runs.size());
    assertEquals("T-11", runs.get(0).get("trainee").asText());
  }

  @Test
  void shouldReportASpanOfDaysAndNothingOutsideIt() {
    String span = DAY.minusDays(3) + ".." + DAY.plusDays(1);
    assertEquals(2, report(span, "--format", "json").exits(0).objects("run").size());
    assertEquals(0, report(DAY.minusDays(1), "--format", "json").exits(0).objects("run").size());
    assertEquals(0, report("--format", "json").exits(0).objects("run").size());
  }

  @Test
  void shouldRefuseASpanThatIsNone() {
    CommandRun run = report("lately").exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("lately"), run.err());
    assertTrue(run.err().contains("today"), run.err());
  }

  @Test
  void shouldNameALogThatIsNotThere() {
    Path none = folder.resolve("none.db");
    CommandRun run = CommandRun.of("report", "--log", none).exits(1);
    assertEquals("", run.out());
    assertTrue(run.err().contains(none.toString()), run.err());
  }

  @Test
  void shouldRefuseAFileThatIsNoLog() {
    CommandRun run = CommandRun.of("report", "--log", booth.settings()).exits(1);
    assertTrue(run.err().contains(booth.settings().toString()), run.err());
  }

  @Test
  void shouldShowTheWayOfOneTraineeByTheSchoolsRule() throws IOException {
    Files.writeString(
        booth.settings().resolveSibling("steady.toml"), "[[rule]]\nruns = 1\nleast_percent = 50\n");
    Files.writeString(
        booth.settings(), "\n[progress]\nrule_file = \"steady.toml\"\n", StandardOpenOption.APPEND);
    CommandRun run = report(DAY, "--progress", "--trainee", "T-11", "--format", "json").exits(0);
    JsonNode pass = run.objects("progress-pass").get(0);
    assertEquals("T-11", pass.get("trainee").asText());
    assertEquals(1, run.objects("progress-pass").size());
    assertEquals(1, run.objects("progress-day").size());
    String text = report(DAY, "--progress").exits(0).out();
    assertTrue(text.contains("T-04: 1 run, 30.0 s of arc"), text);
    assertTrue(text.contains("no safety device"), text);
  }

  @Test
  void shouldNameTheRuleFileThatIsNotThere() throws IOException {
    Files.writeString(
        booth.settings(), "\n[progress]\nrule_file = \"none.toml\"\n", StandardOpenOption.APPEND);
    CommandRun run = report(DAY, "--progress").exits(2);
    assertTrue(run.err().contains("none.toml: there is no such file"), run.err());
    report(DAY).exits(0);
  }

  @Test
  void shouldWriteAPageWithAChartOfEachRun() throws IOException {
    Path page = folder.resolve("shift.html");
    CommandRun run = report(DAY, "--format", "html", "--output", page).exits(0);
    assertEquals("", run.out());
    assertTrue(run.err().contains("the report is in " + page), run.err());
    String html = Files.readString(page);
    assertTrue(html.startsWith("<!DOCTYPE html>"), html);
    assertEquals(2, html.split("class=\"strip\"", -1).length - 1);
    CommandRun again = report(DAY, "--format", "html", "--output", page).exits(1);
    assertTrue(again.err().contains("--force"), again.err());
    report(DAY, "--format", "html", "--output", page, "--force").exits(0);
  }

  @Test
  void shouldWriteATableInTheLanguageAskedFor() {
    List<String> lines = report(DAY, "--format", "csv").exits(0).out().lines().toList();
    assertEquals(5, lines.size(), "names, two trainees, two runs");
    assertTrue(lines.get(1).startsWith("trainee,B-07,T-04,"), lines.get(1));
    String spanish = report(DAY, "--format", "csv", "--language", "es").exits(0).out();
    assertTrue(spanish.contains("lámpara en fallo"), spanish);
    CommandRun refused = report(DAY, "--format", "csv", "--language", "xx").exits(2);
    assertTrue(refused.err().contains("must be en or es, but is \"xx\""), refused.err());
  }

  @Test
  void shouldSpeakTheLanguageOfTheSettings() throws IOException {
    Files.writeString(
        booth.settings(), "\n[screen]\nlanguage = \"es\"\n", StandardOpenOption.APPEND);
    assertTrue(report(DAY, "--format", "html").exits(0).out().contains("<html lang=\"es\">"));
  }

  @Test
  void shouldGiveThePageOnStandardOutput() {
    String page = CommandRun.of("report", DAY, "--log", booth.log(), "-f", "html").exits(0).out();
    assertTrue(page.endsWith("</html>\n"), page);
  }

  @Test
  void shouldSayWhatToLookAt() {
    String text = report(DAY).exits(0).out();
    assertTrue(text.contains("WHAT TO LOOK AT"), text);
    assertTrue(text.contains("operator factor"), text);
    List<JsonNode> glances = report(DAY, "--format", "json").exits(0).objects("glance");
    assertEquals(2, glances.size());
    assertEquals("first_to_last", glances.get(0).get("shift_from").asText());
    assertTrue(glances.get(0).get("operator_factor").asDouble() > 0);
  }

  @Test
  void shouldHoldArcTimeAgainstTheShiftOfTheSettings() throws IOException {
    Files.writeString(
        booth.settings(),
        "\n[[shift]]\nname = \"day\"\nstart = \"00:00\"\nend = \"23:59\"\n",
        StandardOpenOption.APPEND);
    JsonNode glance = report(DAY, "--format", "json").exits(0).objects("glance").get(0);
    assertEquals("shifts", glance.get("shift_from").asText());
    assertEquals(23 * 3_600 + 59 * 60, glance.get("shift_s").asDouble());
  }

  @Test
  void shouldRefuseAPageOfProgress() {
    CommandRun run = report(DAY, "--progress", "--format", "html").exits(2);
    assertTrue(run.err().contains("--progress comes as text or json"), run.err());
  }
}
