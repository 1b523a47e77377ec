package org.boothlamp.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.report.ComparedFigure;
import org.boothlamp.report.Durations;
import org.boothlamp.report.Markup;
import org.boothlamp.report.Numbers;
import org.boothlamp.report.ReplayChoice;
import org.boothlamp.report.ReplaySpell;
import org.boothlamp.report.ReplayStory;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.SideBySide;
import org.boothlamp.report.TimesOfDay;
import org.boothlamp.report.WeldReplay;

/**
 * The page of a replay: what can be read without the script stands in it, the rest is filled in by
 * {@code replay.js}. Used once.
 */
final class ReplayBody {

  private static final String[] SPEEDS = {"0.1", "0.25", "0.5", "1", "2", "5"};
  private static final List<String> WORDS =
      List.of(
          "page.no-connection",
          "replay.page.play",
          "replay.page.hold",
          "replay.page.zoom.is",
          "replay.page.zoom.single",
          "replay.page.zoom.shorts",
          "replay.page.zoom.not-measured",
          "replay.page.sound.wait");

  private final Layout layout;
  private final SideBySide pair;
  private final ZoneId zone;
  private final boolean hasRaw;

  ReplayBody(Layout layout, SideBySide pair, ZoneId zone, boolean hasRaw) {
    this.layout = layout;
    this.pair = pair;
    this.zone = zone;
    this.hasRaw = hasRaw;
  }

  /** Writes all of it; {@code choices} is null for a run without a procedure. */
  void append(Markup page, List<ReplayChoice> choices) {
    page.open("p").leaf("a", layout.say("page.run", id(pair.one())), "href", run(pair.one()));
    page.text(" · " + who(pair.one().run())).close();
    if (choices != null && !choices.isEmpty()) {
      choose(page, choices);
    }
    screen(page);
    controls(page);
    chart(page, "amps");
    chart(page, "volts");
    raw(page);
    figures(page);
    story(page, "replay.page.story", pair.one());
    if (pair.beside() != null) {
      story(page, "replay.page.story.beside", pair.beside());
    }
  }

  private static String id(WeldReplay replay) {
    return Long.toString(replay.run().id());
  }

  private static String run(WeldReplay replay) {
    return "/runs/" + id(replay);
  }

  private String who(RunRecord run) {
    return day(run.startWallMillis())
        + " · "
        + RunWords.trainee(layout, run)
        + " · "
        + RunWords.weld(run)
        + (run.notes().isReference() ? " · " + layout.say("bead.reference") : "");
  }

  private String day(long wallMillis) {
    ShiftSpan span = new ShiftSpan(wallMillis, wallMillis + 1, zone);
    LocalDate date = Instant.ofEpochMilli(wallMillis).atZone(zone).toLocalDate();
    return date + " " + TimesOfDay.words(wallMillis, span);
  }

  private void choose(Markup page, List<ReplayChoice> choices) {
    page.open("form", "method", "get", "action", "/replay/" + id(pair.one()), "class", "beside");
    page.leaf("label", layout.say("replay.page.choose"), "for", "beside-run");
    page.open("select", "name", "beside", "id", "beside-run");
    page.leaf("option", layout.say("replay.page.alone"), "value", "");
    for (ReplayChoice choice : choices) {
      option(page, choice);
    }
    page.close();
    page.leaf("button", layout.say("replay.page.choose.do"), "type", "submit").close();
  }

  private void option(Markup page, ReplayChoice choice) {
    String text =
        (choice.reference() ? layout.say("bead.reference") + " · " : "")
            + day(choice.startWallMillis())
            + " · "
            + (choice.trainee().isEmpty() ? layout.say("nobody") : choice.trainee())
            + " · "
            + Durations.words(choice.lengthSeconds());
    String value = Long.toString(choice.id());
    if (pair.beside() != null && pair.beside().run().id() == choice.id()) {
      page.leaf("option", text, "value", value, "selected", "selected");
    } else {
      page.leaf("option", text, "value", value);
    }
  }

  private void screen(Markup page) {
    page.open(
        "section",
        "id",
        "replay",
        "class",
        "replay",
        "tabindex",
        "0",
        "role",
        "group",
        "aria-label",
        layout.say("replay.page.now"),
        "data-run",
        id(pair.one()),
        "data-beside",
        pair.beside() == null ? "" : id(pair.beside()),
        "data-raw",
        Boolean.toString(hasRaw),
        "data-words",
        words());
    moment(page, "one", pair.one().run());
    if (pair.beside() != null) {
      moment(page, "beside", pair.beside().run());
    }
    page.leaf("noscript", layout.say("replay.page.no-script")).close();
  }

  private void moment(Markup page, String which, RunRecord run) {
    page.open("div", "class", "moment", "id", which, "data-signal", "none");
    LampPicture.append(page);
    page.open("div", "class", "say");
    page.leaf("h2", layout.say("replay.page." + which));
    if (which.equals("beside")) {
      page.leaf("p", who(run), "class", "who");
    }
    if (run.notes().isReference() && !run.notes().reference().words().isEmpty()) {
      page.leaf("p", run.notes().reference().words(), "class", "words");
    }
    page.leaf("p", "", "class", "word");
    page.leaf("p", "", "class", "values");
    page.leaf("p", "", "class", "sentence", "aria-live", "polite").close();
    page.close();
  }

  private void controls(Markup page) {
    group(page, "replay.page.controls");
    button(page, "before", "replay.page.before", "second");
    button(page, "back", "replay.page.back", "second");
    button(page, "play", "replay.page.play", "play");
    button(page, "on", "replay.page.on", "second");
    button(page, "next", "replay.page.next", "second");
    page.leaf("label", layout.say("replay.page.speed"), "for", "speed");
    page.open("select", "id", "speed");
    for (String speed : SPEEDS) {
      if (speed.equals("1")) {
        page.leaf("option", speed + "×", "value", speed, "selected", "selected");
      } else {
        page.leaf("option", speed + "×", "value", speed);
      }
    }
    page.close().close();
    page.open("p", "class", "position");
    page.leaf("label", layout.say("replay.page.position"), "for", "position");
    page.empty(
        "input",
        "type",
        "range",
        "id",
        "position",
        "min",
        "0",
        "max",
        Integer.toString(Math.max(0, pair.frames() - 1)),
        "step",
        "1",
        "value",
        "0");
    page.leaf("output", "", "id", "seconds", "for", "position").close();
    page.leaf("p", layout.say("replay.page.keys"), "class", "hint");
  }

  private void group(Markup page, String key) {
    page.open("div", "class", "controls", "role", "group", "aria-label", layout.say(key));
  }

  private void button(Markup page, String id, String key, String style) {
    page.leaf("button", layout.say(key), "type", "button", "id", id, "class", style);
  }

  private void chart(Markup page, String quantity) {
    Layout.chart(
        page,
        quantity,
        layout.say("replay.page.chart." + quantity),
        layout.say("replay.page.chart.is." + quantity));
  }

  private void raw(Markup page) {
    page.open("section", "class", "raw", "aria-labelledby", "title-raw");
    page.leaf("h2", layout.say("replay.page.raw"), "id", "title-raw");
    if (!hasRaw) {
      page.leaf("p", layout.say("replay.page.no-raw")).close();
      return;
    }
    page.leaf("p", layout.say("replay.page.raw.how"), "class", "hint");
    group(page, "replay.page.zoom");
    button(page, "zoom-in", "replay.page.zoom.in", "second");
    button(page, "zoom-out", "replay.page.zoom.out", "second");
    button(page, "whole", "replay.page.zoom.whole", "second");
    button(page, "listen", "replay.page.listen", "second");
    page.close();
    page.leaf("p", "", "id", "zoom-says", "role", "status");
    for (String quantity : new String[] {"volts", "amps"}) {
      page.open(
              "div",
              "id",
              "raw-" + quantity,
              "class",
              "chart",
              "role",
              "img",
              "aria-label",
              layout.say("replay.page.raw.is." + quantity))
          .close();
    }
    page.open("p", "class", "sound", "hidden", "hidden", "id", "sound-place");
    page.leaf("label", layout.say("replay.page.sound"), "for", "sound");
    page.open("audio", "id", "sound", "controls", "controls").close().close();
    page.close();
  }

  private void figures(Markup page) {
    page.open("div", "class", "wide").open("table");
    page.leaf("caption", layout.say("replay.page.figures"));
    page.open("thead").open("tr").leaf("th", layout.say("replay.page.figure"), "scope", "col");
    page.leaf("th", layout.say("replay.page.one"), "scope", "col");
    if (pair.beside() != null) {
      page.leaf("th", layout.say("replay.page.beside"), "scope", "col");
    }
    page.close().close().open("tbody");
    for (ComparedFigure figure : pair.figures()) {
      page.open("tr").leaf("th", figure.label(layout.phrases()), "scope", "row");
      page.leaf("td", figure.oneText());
      if (pair.beside() != null) {
        page.leaf("td", figure.besideText());
      }
      page.close();
    }
    page.close().close().close();
  }

  private void story(Markup page, String key, WeldReplay replay) {
    page.open("section", "class", "story").leaf("h2", layout.say(key)).open("ol");
    for (ReplaySpell spell : ReplayStory.of(replay, layout.phrases()).spells()) {
      String seconds = Numbers.fixed(spell.fromSeconds(), 2);
      page.open("li");
      page.leaf(
          "button", seconds + " s", "type", "button", "class", "moment-link", "data-at", seconds);
      page.text(" " + spell.says()).close();
    }
    page.close().close();
  }

  /** What the script says, as JSON in an attribute: inline scripts are not allowed. */
  private String words() {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      for (Signal signal : Signal.values()) {
        json.writeStringField("signal." + signal.word(), layout.say("signal." + signal.word()));
      }
      for (String key : WORDS) {
        json.writeStringField(key, layout.say(key, "{0}", "{1}", "{2}"));
      }
      json.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }
}
