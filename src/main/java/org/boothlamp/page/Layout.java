package org.boothlamp.page;

import java.util.List;
import java.util.function.Consumer;
import org.boothlamp.report.Markup;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * What all pages of a booth have in common: head, menu, foot. Immutable once all views are known.
 */
public final class Layout {

  static final String FORM_TOKEN = "form_token";

  private final String booth;
  private final Phrases phrases;
  private final Units units;
  private final String version;
  private List<View> menu = List.of();

  /**
   * A layout.
   *
   * @param version of the static files
   */
  Layout(PageOptions options, String version) {
    this.version = version;
    booth = options.boothId();
    phrases = Phrases.in(options.language());
    units = options.units();
  }

  void setMenu(List<View> views) {
    menu = views.stream().filter(view -> view.menuKey() != null).toList();
  }

  /** What it says. */
  public Phrases phrases() {
    return phrases;
  }

  /** What lengths are said in. */
  public Units units() {
    return units;
  }

  /** Booth id. */
  public String booth() {
    return booth;
  }

  /** The phrase with this key. */
  public String say(String key, Object... parts) {
    return phrases.say(key, parts);
  }

  /**
   * A whole page.
   *
   * @param title for the browser's tab and as the first heading
   * @param body writes the main part
   * @param scripts names of static files, run in this order once the page is read
   */
  public Answer page(Request request, String title, Consumer<Markup> body, String... scripts) {
    return page(200, request, title, body, scripts);
  }

  /** The same with another status. */
  public Answer page(
      int status, Request request, String title, Consumer<Markup> body, String... scripts) {
    Markup page = new Markup();
    page.verbatim("<!DOCTYPE html>\n").open("html", "lang", phrases.language().code());
    head(page, title, scripts);
    page.open("body");
    page.leaf("a", say("page.skip"), "class", "skip", "href", "#main");
    header(page, request);
    page.open("main", "id", "main").leaf("h1", title);
    body.accept(page);
    page.close();
    page.open("footer");
    page.leaf("p", say("page.measures"));
    page.open("p").leaf("a", say("page.licence"), "href", file("uPlot-LICENSE.txt")).close();
    page.close().close().close();
    return Answer.of(status, Answer.HTML, page.toString());
  }

  private void head(Markup page, String title, String... scripts) {
    page.open("head").empty("meta", "charset", "utf-8");
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.leaf("title", title + " · " + booth + " · Boothlamp");
    page.empty("link", "rel", "icon", "href", file("icon.svg"), "type", "image/svg+xml");
    page.empty("link", "rel", "stylesheet", "href", file("uPlot.min.css"));
    page.empty("link", "rel", "stylesheet", "href", file("page.css"));
    for (String script : scripts) {
      page.open("script", "src", file(script), "defer", "defer").close();
    }
    page.close();
  }

  private String file(String name) {
    return "/static/" + name + "?v=" + version;
  }

  private void header(Markup page, Request request) {
    page.open("header").leaf("p", booth, "class", "booth");
    page.open("nav", "aria-label", say("page.menu")).open("ul");
    for (View view : menu) {
      if (request.visitor().may(view.right())) {
        item(page, view, request.path().equals(view.path()));
      }
    }
    page.close().close();
    if (request.visitor().signedOn()) {
      form(page, request, SignOnView.OFF, "class", "sign-off");
      page.leaf("button", say("page.sign-off", roleOf(request)), "type", "submit").close();
    }
    page.close();
  }

  private void item(Markup page, View view, boolean here) {
    page.open("li");
    if (here) {
      page.leaf("a", say(view.menuKey()), "href", view.path(), "aria-current", "page");
    } else {
      page.leaf("a", say(view.menuKey()), "href", view.path());
    }
    page.close();
  }

  private String roleOf(Request request) {
    return say("page.role." + request.visitor().role().word());
  }

  /**
   * Begins a form that this page's own gate lets through; close it with {@code close}.
   *
   * @param action where to
   * @param attributes more of them, names and values in turn
   */
  public void form(Markup page, Request request, String action, String... attributes) {
    String[] all = new String[attributes.length + 4];
    System.arraycopy(attributes, 0, all, 4, attributes.length);
    all[0] = "method";
    all[1] = "post";
    all[2] = "action";
    all[3] = action;
    page.open("form", all);
    page.empty(
        "input", "type", "hidden", "name", FORM_TOKEN, "value", request.visitor().formToken());
  }

  /**
   * The place in which a script draws a chart of a quantity.
   *
   * @param title heading above it
   * @param picture what it shows, for those who do not see it
   */
  static void chart(Markup page, String quantity, String title, String picture) {
    String heading = "title-" + quantity;
    page.open("section", "class", "strip", "aria-labelledby", heading);
    page.leaf("h2", title, "id", heading);
    page.open(
        "div", "id", "chart-" + quantity, "class", "chart", "role", "img", "aria-label", picture);
    page.close().close();
  }

  /** The page that says why the one asked for is not there. */
  Answer error(Request request, PageException refused) {
    return page(
        refused.status(),
        request,
        say("page.error.title"),
        page -> {
          page.leaf("p", say(refused.key(), refused.parts()), "class", "problem", "role", "alert");
          page.open("p").leaf("a", say("page.home"), "href", "/").close();
        });
  }
}
