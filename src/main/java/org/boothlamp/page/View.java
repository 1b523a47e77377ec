package org.boothlamp.page;

/**
 * One address of the page. Called from several threads at once; must be done in well under a
 * second.
 *
 * <p>Rights, the origin of forms and their token are looked at before a view is asked. Everything
 * it writes goes through {@link org.boothlamp.report.Markup}, which escapes.
 */
public interface View {

  /** "/runs" for this address alone, "/runs/" for all below it; the longest that fits counts. */
  String path();

  /** What the visitor must be allowed to. */
  Right right();

  /**
   * Answers GET and HEAD.
   *
   * @throws PageException if there is no such thing
   */
  Answer get(Request request);

  /**
   * Answers a form.
   *
   * @throws PageException if it is refused
   */
  default Answer post(Request request) {
    throw new PageException(405, "page.error.method");
  }

  /** The phrase by which the menu calls it, or null if it is not in there. */
  default String menuKey() {
    return null;
  }
}
