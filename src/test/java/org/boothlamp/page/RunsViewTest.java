package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The runs of a log, some of whose words nobody should have let in. */
class RunsViewTest {

  private static final LocalDate DAY =
      Instant.ofEpochMilli(LogEntries.FIRST_WALL_MILLIS)
          .atZone(ZoneId.systemDefault())
          .toLocalDate();

  @TempDir Path folder;
  private Path log;

  @BeforeEach
  void weld() {
    log = folder.resolve("booth.db");
    FilledLog.write(log, "B-07", 3);
  }

  private Answer get(String address) {
    return new Visit(Visit.site(Visit.open(), log, new Visit.Desk())).get(address);
  }

  @Test
  void shouldListTheRunsOfADayTheLatestFirst() {
    String text = get("/runs?day=" + DAY).text();
    assertTrue(text.contains("<p>3 runs</p>"), text);
    Matcher link = Pattern.compile("href=\"/runs/(\\d+)\"").matcher(text);
    assertTrue(link.find());
    long latest = Long.parseLong(link.group(1));
    assertTrue(link.find());
    assertTrue(Long.parseLong(link.group(1)) < latest);
    assertTrue(get("/runs?day=" + DAY.plusDays(1)).text().contains("No run on this day."));
  }

  @Test
  void shouldShowOneRunWithWhatOthersAddToIt() {
    BoothPage page =
        new BoothPage(
            Visit.open(), new LiveFeed(), log, new Visit.Desk(), Map::of, () -> Visit.NOW_MILLIS);
    page.withRunPart(
        layout -> (markup, run, request) -> markup.leaf("p", "bead of <" + run.id() + ">"));
    Answer answer = new Visit(page.site()).get("/runs/1");
    assertEquals(200, answer.status());
    assertTrue(answer.text().contains("bead of &lt;1&gt;"), answer.text());
    assertTrue(answer.text().contains("href=\"/runs?day=" + DAY + "\""), answer.text());
    assertTrue(answer.text().contains("S-3F-18"), answer.text());
    assertEquals(404, get("/runs/4711").status());
  }

  @Test
  void shouldTakeAViewOfAnotherPartIntoItsMenu() {
    BoothPage page =
        new BoothPage(
            Visit.open(), new LiveFeed(), log, new Visit.Desk(), Map::of, () -> Visit.NOW_MILLIS);
    page.with(layout -> new Greeting());
    Visit visit = new Visit(page.site());
    assertTrue(visit.get("/runs").text().contains("<a href=\"/greeting/\">"));
    assertEquals("hello you", visit.get("/greeting/you").text());
  }

  private static final class Greeting implements View {
    @Override
    public String path() {
      return "/greeting/";
    }

    @Override
    public Right right() {
      return Right.SEE;
    }

    @Override
    public String menuKey() {
      return "page.home";
    }

    @Override
    public Answer get(Request request) {
      return Answer.of(200, "text/plain", "hello " + request.rest(this));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"<script>alert(1)</script>", "\"><img src=x>", "\u202eT-04", "T\u0007"})
  void shouldMakeWordsOfTheLogHarmless(String trainee) throws Exception {
    FilledLog.execute(log, "UPDATE segment SET trainee = '" + trainee.replace("'", "''") + "'");
    for (String address : new String[] {"/runs?day=" + DAY, "/runs/1"}) {
      Answer answer = get(address);
      assertEquals(200, answer.status());
      assertFalse(answer.text().contains(trainee), answer.text());
      assertFalse(answer.text().contains("<img"), answer.text());
    }
  }

  @Test
  void shouldShowATraineeCodeOfTenThousandCharacters() throws Exception {
    FilledLog.execute(log, "UPDATE segment SET trainee = '" + "M".repeat(10_000) + "'");
    assertEquals(200, get("/runs?day=" + DAY).status());
    assertEquals(200, get("/runs/1").status());
  }

  @Test
  void shouldSayThatTheLogCannotBeRead() throws Exception {
    Files.writeString(log, "this is no log at all, whatever its name says");
    Answer answer = get("/runs");
    assertEquals(503, answer.status());
    assertTrue(answer.text().contains("boothlamp check"), answer.text());
    assertFalse(answer.text().contains(folder.toString()), "no paths of the computer");
  }
}
