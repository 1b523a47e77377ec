package org.boothlamp.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.report.Markup;

/**
 * The lamp, amps, volts, window and strip chart of the running arc: for the screen in the booth.
 */
final class LiveView implements View {

  private static final List<String> SCRIPTS =
      List.of("uPlot.min.js", "follow.js", "lamp.js", "live.js");
  private static final List<String> WORDS =
      List.of(
          "page.no-connection",
          "page.error.token",
          "page.stale",
          "page.side.amps.low",
          "page.side.amps.high",
          "page.side.volts.low",
          "page.side.volts.high",
          "same.page.seconds",
          "nobody",
          "page.no-procedure");

  private final Layout layout;

  LiveView(Layout layout) {
    this.layout = layout;
  }

  @Override
  public String path() {
    return "/";
  }

  @Override
  public Right right() {
    return Right.SEE;
  }

  @Override
  public String menuKey() {
    return "page.live";
  }

  @Override
  public Answer get(Request request) {
    return layout.page(
        request,
        layout.say("page.live"),
        page -> {
          now(page);
          chart(page, "amps");
          chart(page, "volts");
          page.leaf("p", layout.say("page.lines"), "class", "hint");
        },
        SCRIPTS.toArray(String[]::new));
  }

  private void now(Markup page) {
    page.open(
        "section",
        "id",
        "now",
        "class",
        "now",
        "aria-label",
        layout.say("page.now"),
        "data-signal",
        "none",
        "data-words",
        words(layout));
    LampPicture.append(page);
    page.open("div", "class", "say");
    page.leaf(
        "p",
        layout.say("page.connecting"),
        "id",
        "word",
        "class",
        "word",
        "role",
        "status",
        "aria-live",
        "polite");
    page.leaf("p", "", "id", "why", "class", "why");
    page.leaf("p", "", "id", "arc", "class", "arc");
    page.leaf("p", "", "id", "who", "class", "who").close();
    gauge(page, "amps", "A");
    gauge(page, "volts", "V");
    page.leaf("noscript", layout.say("page.no-script")).close();
  }

  private void gauge(Markup page, String quantity, String unit) {
    page.open("div", "class", "gauge", "id", "gauge-" + quantity);
    page.leaf("h2", layout.say("page." + quantity));
    page.open("p", "class", "value").leaf("span", "–", "id", quantity);
    page.leaf("span", unit, "class", "unit").close();
    page.leaf("p", "", "id", quantity + "-window", "class", "window");
    page.open("div", "class", "scale", "aria-hidden", "true");
    page.open("div", "class", "band").close().open("div", "class", "pointer").close();
    page.close().close();
  }

  private void chart(Markup page, String quantity) {
    Layout.chart(
        page,
        quantity,
        layout.say("page.strip." + quantity),
        layout.say("page.strip.is." + quantity));
  }

  /** What the scripts say, as JSON in an attribute: inline scripts are not allowed. */
  static String words(Layout layout) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      for (Signal signal : Signal.values()) {
        json.writeStringField("signal." + signal.word(), layout.say("signal." + signal.word()));
      }
      for (String key : WORDS) {
        json.writeStringField(key, layout.say(key));
      }
      json.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }
}
