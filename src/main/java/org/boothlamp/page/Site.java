package org.boothlamp.page;

import java.util.List;
import java.util.Map;
import org.boothlamp.boothlog.BoothLogException;
import org.tinylog.Logger;

/**
 * Answers calls: looks at who may, picks the view, adds the headers that every answer has.
 *
 * <pre>
 *   Call -> Gate -> View -> Answer -> SecurityHeaders
 * </pre>
 *
 * <p>Knows nothing of sockets. Safe to share.
 */
final class Site {

  private final Gate gate;
  private final Layout layout;
  private final SecurityHeaders headers;
  private final RateLimit signOns;
  private final List<View> views;

  /**
   * A site.
   *
   * @param signOns how often an address may try a token
   */
  Site(Gate gate, Layout layout, SecurityHeaders headers, RateLimit signOns, List<View> views) {
    this.gate = gate;
    this.layout = layout;
    this.headers = headers;
    this.signOns = signOns;
    this.views = List.copyOf(views);
    layout.setMenu(views);
  }

  /**
   * Answers a call.
   *
   * @param address of who calls, for limits only
   */
  Answer answer(Call call, String address) {
    Answer answer = call.path().equals(LiveStream.PATH) ? live(call, address) : page(call, address);
    return headers.addTo(answer);
  }

  private Answer page(Call call, String address) {
    Visitor visitor = new Visitor(null, "", false);
    try {
      gate.checkHost(call);
      gate.checkSite(call);
      visitor = gate.visitor(call);
      return answer(call, visitor, address);
    } catch (PageException refused) {
      return layout.error(request(call, Map.of(), visitor), refused);
    } catch (BoothLogException unreadable) {
      Logger.warn("page: {}", unreadable.getMessage());
      return layout.error(
          request(call, Map.of(), visitor), new PageException(503, "page.error.log"));
    }
  }

  private Answer answer(Call call, Visitor visitor, String address) {
    if (call.path().equals(SignOnView.ON) || call.path().equals(SignOnView.OFF)) {
      return signOnOrOff(call, visitor, address);
    }
    View view = viewOf(call.path());
    if (!visitor.may(view.right())) {
      if (visitor.role() == null) {
        return Answer.seeOther(SignOnView.ON);
      }
      throw new PageException(403, "page.error.right");
    }
    return ask(view, call, visitor);
  }

  private Answer ask(View view, Call call, Visitor visitor) {
    switch (call.method()) {
      case "GET", "HEAD" -> {
        return view.get(request(call, Map.of(), visitor));
      }
      case "POST" -> {
        Map<String, String> form = FormFields.of(call.body());
        gate.checkForm(call, form, visitor);
        return view.post(request(call, form, visitor));
      }
      default -> throw new PageException(405, "page.error.method");
    }
  }

  private Answer signOnOrOff(Call call, Visitor visitor, String address) {
    SignOnView view = new SignOnView(layout, gate, call.path());
    if (call.method().equals("POST") && !view.isOff() && !signOns.allows(address)) {
      throw new PageException(429, "page.error.tries");
    }
    return ask(view, call, visitor);
  }

  /** The longest path that fits. */
  private View viewOf(String path) {
    View found = null;
    for (View view : views) {
      String own = view.path();
      boolean fits =
          own.length() > 1 && own.endsWith("/") ? path.startsWith(own) : path.equals(own);
      if (fits && (found == null || own.length() > found.path().length())) {
        found = view;
      }
    }
    if (found == null) {
      throw new PageException(404, "page.error.none");
    }
    return found;
  }

  private static Request request(Call call, Map<String, String> form, Visitor visitor) {
    Map<String, String> query;
    try {
      query = FormFields.of(call.query());
    } catch (PageException unreadable) {
      query = Map.of();
    }
    return new Request(call.path(), query, form, visitor);
  }

  /**
   * The live values are the one thing that a class view of another origin may read, with a token in
   * a header: a browser never sends that by itself.
   */
  private Answer live(Call call, String address) {
    String from = gate.classViewOf(call);
    try {
      gate.checkHost(call);
      if (from == null) {
        gate.checkSite(call);
      }
      if (call.method().equals("OPTIONS") && from != null) {
        return forClassView(Answer.empty(204), from)
            .with("Access-Control-Allow-Methods", "GET")
            .with("Access-Control-Allow-Headers", "Authorization")
            .with("Access-Control-Max-Age", "600");
      }
      Answer answer = live(call, from == null ? gate.visitor(call) : bearer(call, address));
      return from == null ? answer : forClassView(answer, from);
    } catch (PageException refused) {
      Answer answer =
          Answer.of(
              refused.status(),
              "text/plain; charset=utf-8",
              layout.say(refused.key(), refused.parts()));
      return from == null ? answer : forClassView(answer, from);
    }
  }

  private Visitor bearer(Call call, String address) {
    Visitor visitor = gate.bearer(call);
    if (visitor.role() == null && !signOns.allows(address)) {
      throw new PageException(429, "page.error.tries");
    }
    return visitor;
  }

  private static Answer live(Call call, Visitor visitor) {
    if (!visitor.may(Right.SEE)) {
      throw new PageException(401, "page.error.token");
    }
    if (!call.method().equals("GET")) {
      throw new PageException(405, "page.error.method");
    }
    return Answer.live("lamp".equals(call.query()) ? LiveKind.LAMP : LiveKind.CHART);
  }

  private static Answer forClassView(Answer answer, String origin) {
    return answer.with("Access-Control-Allow-Origin", origin).with("Vary", "Origin");
  }
}
