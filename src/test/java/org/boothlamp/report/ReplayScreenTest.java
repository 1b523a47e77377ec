package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.time.ZoneOffset;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.Test;

/** A replay as pictures, lines and JSON. */
class ReplayScreenTest {

  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  private static WeldReplay one() {
    return new TraceBuilder()
        .burn(1, 110, 23, Signal.SETTLING)
        .burn(1, 110, 23, Signal.GREEN)
        .burn(1, 90, 30, Signal.RED)
        .of(
            run()
                .id(17)
                .length(3)
                .excursion(Quantity.VOLTS, Side.HIGH, 2.0, 1, 30)
                .excursion(Quantity.AMPS, Side.LOW, 2.0, 1, 90));
  }

  private static WeldReplay other() {
    return new TraceBuilder()
        .burn(1, 112, 22, Signal.SETTLING)
        .burn(1, 112, 22, Signal.GREEN)
        .of(run().id(12).length(2));
  }

  private static ReplayScreen screen(Colour colour) {
    return new ReplayScreen(new SideBySide(one(), other()), ENGLISH, ZoneOffset.UTC, 80, colour);
  }

  @Test
  void shouldDrawPicturesOfTheSameHeightThatFitOnATerminal() {
    ReplayScreen screen = screen(Colour.PLAIN);
    for (int frame = 0; frame < 60; frame++) {
      String picture = screen.picture(frame, "speed 1");
      assertEquals(ReplayScreen.MOST_LINES, picture.lines().count());
      assertTrue(picture.lines().allMatch(line -> line.length() <= 80), picture);
      assertFalse(picture.contains("\u001b"));
    }
  }

  @Test
  void shouldDrawNothingThatIsStillToCome() {
    String early = screen(Colour.PLAIN).picture(10, "");
    assertFalse(early.contains("!"), early);
    String late = screen(Colour.PLAIN).picture(59, "");
    assertTrue(late.contains("=!"), late);
  }

  @Test
  void shouldTellBothRunsAtEveryMoment() {
    String picture = screen(Colour.PLAIN).picture(50, "speed 0.25");
    assertTrue(picture.contains("[R  ] red"), picture);
    assertTrue(picture.contains("[  .] idle"), picture);
    assertTrue(picture.contains("Outside: volts above 26 V for 1.0 s, at worst 30.0 V"), picture);
    assertTrue(picture.contains("beside: The run is over after 2.0 s"), picture);
    assertTrue(picture.contains("speed 0.25"), picture);
  }

  @Test
  void shouldColourTheLampOnlyWhereColourIsWanted() {
    assertTrue(screen(Colour.ANSI).picture(50, "").contains("\u001b[31m[R  ] "));
  }

  @Test
  void shouldMarkBothRunsWhereTheyAreAlike() {
    SideBySide same = new SideBySide(one(), one());
    ReplayChart chart = new ReplayChart(same, Quantity.AMPS, 80, 6);
    List<String> lines = chart.linesUpTo(59);
    assertTrue(lines.stream().anyMatch(line -> line.contains("@@@@")), lines.toString());
    assertTrue(lines.stream().noneMatch(line -> line.contains("*")), lines.toString());
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("    125 -")), lines.toString());
  }

  @Test
  void shouldSayWhatIsNewOnceInLines() {
    ReplayScreen screen = screen(Colour.PLAIN);
    assertTrue(screen.isNews(20));
    assertTrue(screen.line(20).contains("Inside the window."), screen.line(20));
    assertFalse(screen.isNews(21));
    assertFalse(screen.line(21).contains("Inside"), screen.line(21));
  }

  @Test
  void shouldPutFiguresSideBySide() {
    String figures = screen(Colour.PLAIN).figures();
    assertTrue(figures.contains("arc time"), figures);
    assertTrue(figures.lines().anyMatch(line -> line.matches(".*3\\.0 s +2\\.0 s")), figures);
  }

  @Test
  void shouldGiveProgramsTwentyFramesASecondWithUnits() throws IOException {
    StringWriter text = new StringWriter();
    WeldReplayJson.write(new SideBySide(one(), other()), ENGLISH, text);
    List<String> lines = text.toString().lines().toList();
    assertEquals(62, lines.size());
    JsonNode head = new ObjectMapper().readTree(lines.get(0));
    assertEquals(17, head.get("id").asLong());
    assertEquals(12, head.get("beside").get("id").asLong());
    assertEquals(0.05, head.get("frame_s").asDouble());
    JsonNode frame = new ObjectMapper().readTree(lines.get(51));
    assertEquals("frame", frame.get("kind").asText());
    assertEquals(2.5, frame.get("t_s").asDouble(), 1e-9);
    assertEquals(90, frame.get("amps").asDouble());
    assertEquals("red", frame.get("signal").asText());
    assertTrue(frame.get("says").asText().startsWith("Outside: volts above 26 V"));
    assertTrue(frame.get("beside").get("amps").isNull());
    JsonNode figures = new ObjectMapper().readTree(lines.get(61));
    assertEquals(3, figures.get("arc_s").asDouble());
    assertEquals(2, figures.get("beside").get("arc_s").asDouble());
  }
}
