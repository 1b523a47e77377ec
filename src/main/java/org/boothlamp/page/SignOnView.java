package org.boothlamp.page;

/** Asks for a role's token, and forgets that it was shown. */
final class SignOnView implements View {

  static final String ON = "/sign-on";
  static final String OFF = "/sign-off";

  private final Layout layout;
  private final Gate gate;
  private final String path;

  SignOnView(Layout layout, Gate gate, String path) {
    this.layout = layout;
    this.gate = gate;
    this.path = path;
  }

  boolean isOff() {
    return path.equals(OFF);
  }

  @Override
  public String path() {
    return path;
  }

  @Override
  public Right right() {
    return Right.NONE;
  }

  @Override
  public Answer get(Request request) {
    return isOff() ? Answer.seeOther("/") : form(200, request, "");
  }

  private Answer form(int status, Request request, String problem) {
    return layout.page(
        status,
        request,
        layout.say("page.sign-on"),
        page -> {
          page.leaf("p", layout.say("page.sign-on.why"));
          if (!problem.isEmpty()) {
            page.leaf("p", problem, "class", "problem", "role", "alert");
          }
          layout.form(page, request, ON, "class", "entry");
          page.leaf("label", layout.say("page.token"), "for", "token");
          page.empty(
              "input",
              "type",
              "password",
              "id",
              "token",
              "name",
              "token",
              "required",
              "required",
              "autocomplete",
              "current-password");
          page.leaf("button", layout.say("page.sign-on.do"), "type", "submit").close();
        });
  }

  @Override
  public Answer post(Request request) {
    if (isOff()) {
      return Answer.seeOther(ON).with("Set-Cookie", gate.signOff());
    }
    String cookie = gate.signOn(request.field("token").strip());
    return cookie == null
        ? form(403, request, layout.say("page.error.token"))
        : Answer.seeOther("/").with("Set-Cookie", cookie);
  }
}
