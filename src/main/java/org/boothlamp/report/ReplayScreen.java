package org.boothlamp.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.TextPage.Style;
import org.boothlamp.words.Phrases;

/**
 * A replay as text for people: as a picture that is drawn again and again, or as lines. Every
 * picture of a replay has as many lines as the others, {@value #MOST_LINES} at most. Immutable.
 */
public final class ReplayScreen {

  /** Lines of the tallest picture: that of two runs. */
  public static final int MOST_LINES = 23;

  private static final int LABEL = 8;
  private static final int AMPS_ROWS = 6;
  private static final int VOLTS_ROWS = 5;
  private static final int SENTENCE_LINES = 2;
  private static final int FIGURE_LABEL = 32;
  private static final int FIGURE = 16;

  private final SideBySide pair;
  private final Phrases phrases;
  private final ReplayStory story;
  private final ReplayStory besideStory;
  private final ReplayChart amps;
  private final ReplayChart volts;
  private final ZoneId zone;
  private final int width;
  private final Colour colour;

  /**
   * A screen for two runs or one.
   *
   * @param width characters in a line, at least 80
   */
  public ReplayScreen(SideBySide pair, Phrases phrases, ZoneId zone, int width, Colour colour) {
    this.pair = pair;
    this.phrases = phrases;
    this.zone = zone;
    this.width = width;
    this.colour = colour;
    story = ReplayStory.of(pair.one(), phrases);
    besideStory = pair.beside() == null ? null : ReplayStory.of(pair.beside(), phrases);
    amps = new ReplayChart(pair, Quantity.AMPS, width, AMPS_ROWS);
    volts = new ReplayChart(pair, Quantity.VOLTS, width, VOLTS_ROWS);
  }

  /** What happens in the first run. */
  public ReplayStory story() {
    return story;
  }

  /** What happens in the other run; null if there is none. */
  public ReplayStory besideStory() {
    return besideStory;
  }

  /** Who welded what when, a line for each run. */
  public String head() {
    TextPage page = page();
    appendHead(page, "run", pair.one());
    if (pair.beside() != null) {
      appendHead(page, "beside", pair.beside());
    }
    return page.toString();
  }

  private void appendHead(TextPage page, String label, WeldReplay replay) {
    RunRecord run = replay.run();
    ZonedDateTime start = Instant.ofEpochMilli(run.startWallMillis()).atZone(zone);
    String text =
        run.id()
            + (run.notes().isReference() ? " (" + phrases.say("bead.reference") + ")" : "")
            + "  "
            + start.toLocalDate()
            + " "
            + TimesOfDay.clock(start)
            + "  "
            + Words.trainee(VisibleText.of(run.trainee()))
            + "  "
            + VisibleText.of(Words.pass(PassKey.of(run)));
    page.left(label, LABEL).line(cut(text, width - LABEL));
  }

  private static String cut(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "~";
  }

  /**
   * The picture of a moment.
   *
   * @param frame which one, from 0 to the last frame of both runs
   * @param note what stands below it, such as the speed
   */
  public String picture(int frame, String note) {
    TextPage page = page().text(head());
    appendColumnNames(page);
    appendNow(page, "run", pair.one(), frame);
    if (pair.beside() != null) {
      appendNow(page, "beside", pair.beside(), frame);
    }
    appendChart(page, "A", amps.linesUpTo(frame));
    appendChart(page, "V", volts.linesUpTo(frame));
    appendLamp(page, "lamp", pair.one(), frame);
    if (pair.beside() != null) {
      appendLamp(page, "beside", pair.beside(), frame);
    }
    appendSentence(page, "", story, frame);
    if (besideStory != null) {
      appendSentence(page, "beside: ", besideStory, frame);
    }
    return page.styled(cut(note, width), Style.FAINT).newLine().toString();
  }

  private TextPage page() {
    return new TextPage(width, colour);
  }

  private void appendColumnNames(TextPage page) {
    page.spaces(LABEL).right("second", 9).spaces(2).left("lamp", 15);
    page.line("    amps  average         volts  average");
  }

  private void appendNow(TextPage page, String label, WeldReplay replay, int frame) {
    page.left(label, LABEL);
    appendMoment(page, replay, replay.frame(frame));
    page.newLine();
  }

  private static void appendMoment(TextPage page, WeldReplay replay, ReplayFrame now) {
    page.right(Numbers.fixed(now.seconds(), 2), 9).spaces(2);
    String lamp = "[" + LampLights.of(now.signal()) + "] ";
    page.styled(lamp, LampLights.style(now.signal())).left(now.signal().word(), 9);
    boolean direct = !replay.isAlternating();
    Window ampsWindow = replay.run().window(Quantity.AMPS);
    Window voltsWindow = replay.run().window(Quantity.VOLTS);
    appendValue(page, direct ? now.amps() : now.highestAmps(), direct ? " A" : " A peak");
    appendAverage(page, now.averageAmps(), ampsWindow);
    appendValue(page, direct ? now.volts() : now.highestVolts(), direct ? " V" : " V peak");
    appendAverage(page, now.averageVolts(), voltsWindow);
  }

  private static void appendValue(TextPage page, double value, String unit) {
    page.right(Double.isNaN(value) ? "-" : Numbers.fixed(value, 1), 7).text(unit);
  }

  private static void appendAverage(TextPage page, double value, Window window) {
    String side = Words.side(value, window);
    page.right(Double.isNaN(value) ? "" : Numbers.fixed(value, 1), 8);
    page.left(side.isEmpty() ? "" : side.equals("high") ? " >" : " <", 3);
  }

  private static void appendChart(TextPage page, String unit, List<String> lines) {
    for (int row = 0; row < lines.size(); row++) {
      page.text(row == 0 ? unit : " ").line(lines.get(row).substring(1));
    }
  }

  private void appendLamp(TextPage page, String label, WeldReplay replay, int frame) {
    page.left(label, LABEL);
    for (Signal signal : amps.lamp(replay, frame)) {
      page.styled(String.valueOf(LampLights.sign(signal)), LampLights.style(signal));
    }
    page.newLine();
  }

  /** Always as many lines, or the picture would jump. */
  private void appendSentence(TextPage page, String label, ReplayStory of, int frame) {
    TextPage sentence = new TextPage(width, Colour.PLAIN);
    sentence.wrapped(label, 2, says(of, frame));
    List<String> lines = sentence.toString().lines().toList();
    for (int line = 0; line < SENTENCE_LINES; line++) {
      page.line(line < lines.size() ? lines.get(line) : "");
    }
  }

  private static String says(ReplayStory of, int frame) {
    return of.at(frame * WeldReplay.FRAME_SECONDS).says();
  }

  /** The names of what stands in {@link #line}. */
  public String lineNames() {
    TextPage page = page();
    page.right("second", 9).spaces(2).left("lamp", 15);
    return page.line("    amps  average         volts  average").toString();
  }

  /** A moment as lines without a picture: one for each run, and what happens if it is new. */
  public String line(int frame) {
    TextPage page = page();
    appendMoment(page, pair.one(), pair.one().frame(frame));
    page.newLine();
    appendNews(page, "", story, frame);
    if (pair.beside() != null) {
      appendMoment(page, pair.beside(), pair.beside().frame(frame));
      page.line("  beside");
      appendNews(page, "beside: ", besideStory, frame);
    }
    return page.toString();
  }

  private static void appendNews(TextPage page, String label, ReplayStory of, int frame) {
    if (isNews(of, frame)) {
      page.wrapped(" ".repeat(11) + label, 11, says(of, frame));
    }
  }

  /** True if something else happens in a frame than in the one before it. */
  public boolean isNews(int frame) {
    return isNews(story, frame) || besideStory != null && isNews(besideStory, frame);
  }

  private static boolean isNews(ReplayStory of, int frame) {
    double seconds = frame * WeldReplay.FRAME_SECONDS;
    return frame == 0 || of.at(seconds) != of.at(seconds - WeldReplay.FRAME_SECONDS);
  }

  /** What the runs come to, side by side. */
  public String figures() {
    TextPage page = page();
    page.newLine().spaces(FIGURE_LABEL).right("run", FIGURE);
    page.right(pair.beside() == null ? "" : "beside", FIGURE).newLine();
    for (ComparedFigure figure : pair.figures()) {
      page.left(figure.label(phrases), FIGURE_LABEL).right(figure.oneText(), FIGURE);
      page.right(pair.beside() == null ? "" : figure.besideText(), FIGURE).newLine();
    }
    return page.toString();
  }
}
