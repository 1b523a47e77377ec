package org.boothlamp.page;

import org.boothlamp.report.BeadRefusedException;
import org.boothlamp.report.EnteredBy;

/** Takes what was seen after the weld: a bead's length, or an instructor's mark. */
final class BeadView implements View {

  static final String PATH = "/bead/";

  private static final String NUMBER = "[0-9]{1,15}";
  private static final String LENGTH = "[0-9]{1,6}([.,][0-9]{1,4})?";

  private final Layout layout;
  private final BeadDesk desk;

  BeadView(Layout layout, BeadDesk desk) {
    this.layout = layout;
    this.desk = desk;
  }

  @Override
  public String path() {
    return PATH;
  }

  @Override
  public Right right() {
    return Right.ENTER;
  }

  @Override
  public Answer get(Request request) {
    return Answer.seeOther("/runs/" + run(request));
  }

  @Override
  public Answer post(Request request) {
    long run = run(request);
    try {
      String refused = take(run, request);
      return refused.isEmpty() ? Answer.seeOther("/runs/" + run) : refusal(request, run, refused);
    } catch (BeadRefusedException refused) {
      return refusal(request, run, refused.say(layout.phrases(), layout.units()));
    }
  }

  /** Answers what is wrong, or nothing. */
  private String take(long run, Request request) {
    switch (request.field("reference")) {
      case "mark", "withdraw" -> {
        mark(run, request);
        return "";
      }
      default -> {
        return enter(run, request);
      }
    }
  }

  private void mark(long run, Request request) {
    if (!request.visitor().may(Right.CLASS)) {
      throw new PageException(403, "page.error.right");
    }
    if (request.field("reference").equals("mark")) {
      desk.mark(run, request.field("words"));
    } else {
      desk.withdraw(run);
    }
  }

  private String enter(long run, Request request) {
    String typed = request.field("length").strip();
    if (!typed.matches(LENGTH)) {
      return layout.say("page.bead.number");
    }
    double length = Double.parseDouble(typed.replace(',', '.'));
    EnteredBy by = request.visitor().may(Right.CLASS) ? EnteredBy.INSTRUCTOR : EnteredBy.TRAINEE;
    desk.enter(run, layout.units().millimetres(length), request.field("note"), by);
    return "";
  }

  private long run(Request request) {
    String number = request.rest(this);
    if (!number.matches(NUMBER)) {
      throw new PageException(404, "page.error.none");
    }
    return Long.parseLong(number);
  }

  private Answer refusal(Request request, long run, String what) {
    return layout.page(
        422,
        request,
        layout.say("page.bead"),
        page -> {
          page.leaf("p", what, "class", "problem", "role", "alert");
          page.open("p");
          page.leaf("a", layout.say("page.run", Long.toString(run)), "href", "/runs/" + run);
          page.close();
        });
  }
}
