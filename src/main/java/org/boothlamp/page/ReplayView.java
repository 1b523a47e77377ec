package org.boothlamp.page;

import java.time.ZoneId;
import java.util.Map;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.report.ArcSound;
import org.boothlamp.report.Markup;
import org.boothlamp.report.RawColumns;
import org.boothlamp.report.RawRecording;
import org.boothlamp.report.RawWindow;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShortSpell;
import org.boothlamp.report.SideBySide;
import org.boothlamp.signal.ShortCircuitRule;

/**
 * A run again, alone or beside another one:
 *
 * <pre>
 *   /replay/17?beside=12                          the page
 *   /replay/17/data?beside=12                     its frames
 *   /replay/17/zoom?from=3.2&amp;to=3.4&amp;columns=900   the raw recording, lowest and highest a column
 *   /replay/17/sound?from=3.2&amp;to=3.4              the arc's sound
 * </pre>
 */
final class ReplayView implements View {

  private static final String JSON = "application/json; charset=utf-8";
  private static final int MOST_COLUMNS = 2_000;
  private static final ShortCircuitRule SHORTS =
      new ShortCircuitRule(ArcRule.STANDARD.shortCircuitVolts(), ArcRule.STANDARD.arcOffAmps());

  private final Layout layout;
  private final ReplayRuns runs;
  private final RawRuns raw;
  private final ZoneId zone;

  ReplayView(Layout layout, ReplayRuns runs, RawRuns raw, ZoneId zone) {
    this.layout = layout;
    this.runs = runs;
    this.raw = raw;
    this.zone = zone;
  }

  /** The way to it from the page of a run. */
  static RunPart link(Layout layout) {
    return (page, run, request) -> {
      page.open("p");
      page.leaf("a", layout.say("replay.page.link"), "href", "/replay/" + run.id()).close();
    };
  }

  @Override
  public String path() {
    return "/replay/";
  }

  @Override
  public Right right() {
    return Right.SEE;
  }

  @Override
  public Answer get(Request request) {
    String[] parts = request.rest(this).split("/", -1);
    String what = parts.length == 1 ? "" : parts.length == 2 ? parts[1] : "?";
    return switch (what) {
      case "" -> page(request, parts[0], parts.length == 1);
      case "data" ->
          Answer.of(200, JSON, ReplayData.of(runs.of(parts[0], request.query()), layout.phrases()));
      case "zoom" -> zoom(parts[0], request.query());
      case "sound" -> sound(parts[0], request.query());
      default -> throw new PageException(404, "page.error.none");
    };
  }

  private Answer page(Request request, String number, boolean exact) {
    if (!exact) {
      throw new PageException(404, "page.error.none");
    }
    SideBySide pair = runs.of(number, request.query());
    ReplayBody body = new ReplayBody(layout, pair, zone, raw.of(pair.one().run().id()) != null);
    return layout
        .page(
            request,
            layout.say("replay.page.title", number),
            page -> write(page, body, pair.one().run()),
            "uPlot.min.js",
            "replay.js")
        .with(SecurityHeaders.POLICY_NAME, SecurityHeaders.POLICY_WITH_SOUND);
  }

  private void write(Markup page, ReplayBody body, RunRecord run) {
    body.append(page, run.procedureId().isEmpty() ? null : runs.choices(run));
  }

  private Answer zoom(String number, Map<String, String> query) {
    RunRecord run = runs.of(number, Map.of()).one().run();
    RawWindow window = window(run, query);
    int columns = (int) Math.max(1, Math.min(MOST_COLUMNS, seconds(query, "columns", 1_000)));
    RawColumns reduced = RawColumns.of(window, run.polarity(), columns);
    return Answer.of(200, JSON, ReplayData.of(reduced, ShortSpell.in(window, SHORTS)));
  }

  private Answer sound(String number, Map<String, String> query) {
    RunRecord run = runs.of(number, Map.of()).one().run();
    return Answer.of(200, "audio/wav", ArcSound.wav(window(run, query)));
  }

  private RawWindow window(RunRecord run, Map<String, String> query) {
    RawRecording recording = raw.of(run.id());
    if (recording == null) {
      throw new PageException(404, "replay.page.no-raw");
    }
    double end = Double.isNaN(run.lengthSeconds()) ? recording.endSeconds() : run.lengthSeconds();
    RawWindow window =
        RawWindow.of(recording, seconds(query, "from", 0), seconds(query, "to", end));
    if (window == null) {
      throw new PageException(404, "replay.page.no-raw");
    }
    return window;
  }

  private static double seconds(Map<String, String> query, String name, double otherwise) {
    String text = query.getOrDefault(name, "");
    if (text.isEmpty()) {
      return otherwise;
    }
    if (!text.matches("-?[0-9]{1,6}([.][0-9]{1,9})?")) {
      throw new PageException(400, "page.error.request");
    }
    return Double.parseDouble(text);
  }
}
