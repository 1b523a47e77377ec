package org.boothlamp.report;

import java.util.List;
import org.boothlamp.report.TextPage.Style;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;

/**
 * A replay as text for people: segments, touches and faults in order of time, then what they come
 * to. Seconds count from the start of the recording. A pure function.
 */
public final class ReplayText {

  private static final int LABEL = 10;

  private final TextPage page;
  private final RunRow row;

  private ReplayText(TextPage page, List<RunFlag> saidElsewhere) {
    this.page = page;
    this.row = new RunRow(page, saidElsewhere);
  }

  /**
   * The whole replay, lines ended by a line feed.
   *
   * @param width characters in a line, at least {@link TextReport#LEAST_WIDTH}
   */
  public static String render(Replay replay, int width, Colour colour) {
    TextPage page = new TextPage(Math.max(width, TextReport.LEAST_WIDTH), colour);
    boolean calibrated = replay.records().runs().stream().anyMatch(RunRecord::calibrated);
    ReplayText text = new ReplayText(page, calibrated ? List.of() : List.of(RunFlag.UNCALIBRATED));
    text.appendHeader(replay);
    replay.tell(text.new Entries());
    text.appendSummary(replay, calibrated);
    return page.toString();
  }

  private void appendHeader(Replay replay) {
    page.nameLine(replay.recording());
    page.wrapped("", 0, Durations.words(replay.lengthSeconds()) + ", judged by " + pass(replay));
    page.newLine();
    row.appendColumnNames("start, s");
  }

  private static String pass(Replay replay) {
    if (replay.records().runs().isEmpty()) {
      return Words.pass(new PassKey(replay.procedureId(), "", replay.pass(), List.of()));
    }
    return Words.pass(PassKey.of(replay.records().runs().get(0)));
  }

  /** Appends the entries as they are told. */
  private final class Entries implements Replay.Teller<RuntimeException> {

    @Override
    public void segment(RunSummary summary) {
      row.append(start(summary.run().startSeconds()), summary);
    }

    @Override
    public void touch(TouchRecord touch) {
      page.right(start(touch.startSeconds()), LABEL);
      page.right(Durations.words(touch.lengthSeconds()), LABEL).text("  ");
      page.line(touch.stuck() ? "touch, stuck electrode" : "touch");
    }

    @Override
    public void fault(EventRecord fault) {
      boolean ended = !Double.isNaN(fault.lengthSeconds());
      page.right(start(fault.startSeconds()), LABEL);
      page.right(ended ? Durations.words(fault.lengthSeconds()) : " to end", LABEL).text("  ");
      page.styled("fault", Style.RED).line(": " + fault.what());
    }
  }

  private static String start(double seconds) {
    return Numbers.fixed(seconds, 2);
  }

  private void appendSummary(Replay replay, boolean calibrated) {
    Figures total = replay.total();
    int touches = replay.records().touches().size();
    page.newLine();
    page.wrapped(
        "",
        2,
        Numbers.counted(total.runs(), "segment", "segments")
            + ", "
            + Numbers.counted(touches, "touch", "touches")
            + "; "
            + Durations.words(total.arcSeconds())
            + " of arc: "
            + signals(total)
            + "; in window "
            + Numbers.share(total.insideShare())
            + (total.judgedSeconds() > 0 ? " of the judged time." : "."));
    if (total.runs() > 0 && !calibrated) {
      page.wrapped("", 2, "No calibration: how far amps and volts are off is not known.");
    }
    for (EventSummary events : EventSummary.of(replay.otherEvents())) {
      page.wrapped("", 2, otherEvents(events));
    }
  }

  private static String signals(Figures total) {
    return Durations.words(total.greenSeconds())
        + " green, "
        + Durations.words(total.amberSeconds())
        + " amber, "
        + Durations.words(total.redSeconds())
        + " red, "
        + Durations.words(total.settlingSeconds())
        + " not judged"
        + (total.faultSeconds() > 0
            ? ", " + Durations.words(total.faultSeconds()) + " in fault"
            : "");
  }

  private static String otherEvents(EventSummary events) {
    String what = events.what();
    return events.count() > 0
        ? what + ": " + new EventWords(Phrases.in(Language.ENGLISH)).counted(what, events.count())
        : what;
  }
}
