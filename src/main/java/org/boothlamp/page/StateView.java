package org.boothlamp.page;

/** How the monitor itself is. */
final class StateView implements View {

  private final Layout layout;
  private final StatePort state;

  StateView(Layout layout, StatePort state) {
    this.layout = layout;
    this.state = state;
  }

  @Override
  public String path() {
    return "/state";
  }

  @Override
  public Right right() {
    return Right.STATE;
  }

  @Override
  public String menuKey() {
    return "page.state";
  }

  @Override
  public Answer get(Request request) {
    return layout.page(
        request,
        layout.say("page.state"),
        page -> {
          page.open("dl", "class", "figures");
          state.state().forEach((key, value) -> page.leaf("dt", layout.say(key)).leaf("dd", value));
          page.close();
        });
  }
}
