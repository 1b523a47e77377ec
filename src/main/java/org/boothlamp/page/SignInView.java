package org.boothlamp.page;

import java.util.List;
import java.util.StringJoiner;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.Markup;

/** Says who welds from now on, and to what. */
final class SignInView implements View {

  /** A code, never a name: letters, digits, dots, hyphens. */
  static final String CODE = "[A-Za-z0-9][A-Za-z0-9._\\-]{0,15}";

  private final Layout layout;
  private final SignInPort signIns;

  SignInView(Layout layout, SignInPort signIns) {
    this.layout = layout;
    this.signIns = signIns;
  }

  @Override
  public String path() {
    return "/sign-in";
  }

  @Override
  public Right right() {
    return Right.ENTER;
  }

  @Override
  public String menuKey() {
    return "page.sign-in";
  }

  @Override
  public Answer get(Request request) {
    return form(200, request, "");
  }

  @Override
  public Answer post(Request request) {
    if (!request.field("out").isEmpty()) {
      signIns.signOut();
      return Answer.seeOther("/");
    }
    String trainee = request.field("trainee").strip();
    if (!trainee.matches(CODE)) {
      return form(422, request, layout.say("page.sign-in.code"));
    }
    SignInPort.Choice choice = choice(request.field("weld"));
    if (choice == null) {
      return form(422, request, layout.say("page.sign-in.gone"));
    }
    try {
      signIns.signIn(trainee, choice.procedureId(), choice.pass());
      return Answer.seeOther("/");
    } catch (IllegalArgumentException refused) {
      return form(422, request, layout.say("page.sign-in.refused", refused.getMessage()));
    }
  }

  private SignInPort.Choice choice(String key) {
    return signIns.choices().stream()
        .filter(choice -> keyOf(choice).equals(key))
        .findFirst()
        .orElse(null);
  }

  private static String keyOf(SignInPort.Choice choice) {
    return choice.procedureId() + "/" + choice.pass();
  }

  private Answer form(int status, Request request, String problem) {
    List<SignInPort.Choice> choices = signIns.choices();
    return layout.page(
        status,
        request,
        layout.say("page.sign-in"),
        page -> {
          if (!problem.isEmpty()) {
            page.leaf("p", problem, "class", "problem", "role", "alert");
          }
          if (choices.isEmpty()) {
            page.leaf("p", layout.say("page.sign-in.none"), "class", "problem");
          } else {
            fields(page, request, choices);
          }
          layout.form(page, request, path(), "class", "entry");
          page.leaf(
              "button",
              layout.say("page.sign-in.out"),
              "type",
              "submit",
              "name",
              "out",
              "value",
              "out",
              "class",
              "second");
          page.close();
        });
  }

  private void fields(Markup page, Request request, List<SignInPort.Choice> choices) {
    layout.form(page, request, path(), "class", "entry");
    page.leaf("label", layout.say("page.trainee"), "for", "trainee");
    page.empty(
        "input",
        "id",
        "trainee",
        "name",
        "trainee",
        "required",
        "required",
        "maxlength",
        "16",
        "pattern",
        CODE,
        "title",
        layout.say("page.sign-in.code"),
        "aria-describedby",
        "code-rule",
        "autocomplete",
        "off",
        "autocapitalize",
        "characters",
        "spellcheck",
        "false",
        "value",
        shortened(request.field("trainee")));
    page.leaf("p", layout.say("page.sign-in.code"), "id", "code-rule", "class", "hint");
    page.leaf("label", layout.say("page.weld"), "for", "weld");
    page.open("select", "id", "weld", "name", "weld", "required", "required");
    for (SignInPort.Choice choice : choices) {
      page.leaf("option", words(choice), attributes(choice, request.field("weld")));
    }
    page.close();
    page.leaf("button", layout.say("page.sign-in.do"), "type", "submit").close();
  }

  private static String shortened(String typed) {
    return typed.substring(0, Math.min(typed.length(), 40));
  }

  private static String[] attributes(SignInPort.Choice choice, String chosen) {
    String key = keyOf(choice);
    return key.equals(chosen)
        ? new String[] {"value", key, "selected", "selected"}
        : new String[] {"value", key};
  }

  private static String words(SignInPort.Choice choice) {
    StringJoiner words = new StringJoiner(", ");
    words.add(choice.procedureId() + " (" + choice.revision() + ") · " + choice.pass());
    for (Window window : choice.windows()) {
      if (window.quantity() == Quantity.AMPS || window.quantity() == Quantity.VOLTS) {
        words.add(WindowWords.of(window));
      }
    }
    return words.toString();
  }
}
