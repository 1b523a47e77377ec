package org.boothlamp.page;

import java.util.List;
import org.boothlamp.report.Markup;

/**
 * Many booths' lamps and running arcs on one big screen. The browser asks each booth directly; this
 * booth only names them.
 */
final class ClassView implements View {

  private final Layout layout;
  private final List<String> booths;

  ClassView(Layout layout, List<String> booths) {
    this.layout = layout;
    this.booths = booths;
  }

  @Override
  public String path() {
    return "/class";
  }

  @Override
  public Right right() {
    return Right.CLASS;
  }

  @Override
  public String menuKey() {
    return "page.class";
  }

  @Override
  public Answer get(Request request) {
    return layout.page(
        request, layout.say("page.class"), this::body, "follow.js", "lamp.js", "class.js");
  }

  private void body(Markup page) {
    page.leaf("p", layout.say(booths.isEmpty() ? "page.class.none" : "page.class.how"));
    page.open("template", "id", "lamp-picture");
    LampPicture.append(page);
    page.close();
    page.open(
        "ul",
        "id",
        "class",
        "class",
        "tiles",
        "data-booths",
        String.join(" ", booths),
        "data-words",
        LiveView.words(layout));
    page.close();
    if (!booths.isEmpty()) {
      tokenForm(page);
    }
  }

  /** Never sent anywhere but to the booths, by the script, in a header. */
  private void tokenForm(Markup page) {
    page.open("form", "id", "token-form", "class", "entry");
    page.leaf("label", layout.say("page.class.token"), "for", "class-token");
    page.empty(
        "input",
        "type",
        "password",
        "id",
        "class-token",
        "autocomplete",
        "off",
        "aria-describedby",
        "token-rule");
    page.leaf("p", layout.say("page.class.token.rule"), "id", "token-rule", "class", "hint");
    page.leaf("button", layout.say("page.class.token.do"), "type", "submit").close();
  }
}
