package org.boothlamp.page;

import java.util.Map;

/**
 * A request that may be answered. Immutable.
 *
 * @param path as sent, not decoded: begins with the view's own
 * @param query decoded
 * @param form decoded fields of a POST whose origin and form token have been looked at
 * @param visitor who asks
 */
public record Request(
    String path, Map<String, String> query, Map<String, String> form, Visitor visitor) {

  public Request {
    query = Map.copyOf(query);
    form = Map.copyOf(form);
  }

  /** A form's field; empty if it is missing. */
  public String field(String name) {
    return form.getOrDefault(name, "");
  }

  /** What follows the view's path: "17" of /runs/17. */
  public String rest(View view) {
    return path.substring(Math.min(path.length(), view.path().length()));
  }
}
