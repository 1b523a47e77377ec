package org.boothlamp.page;

import java.net.InetSocketAddress;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boothlamp.monitor.WallClock;

/**
 * Decides who a call comes from and whether a browser was talked into it by another page.
 *
 * <p>Defends against: other sites' scripts and forms (Origin, Sec-Fetch-Site, form token, cookie of
 * SameSite=Strict), a name that was made to point at this computer (Host, on loopback). Safe to
 * share.
 */
final class Gate {

  private static final Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final String BEARER = "Bearer ";

  private final Tokens tokens;
  private final boolean secure;
  private final boolean loopback;
  private final List<String> classViewFrom;
  private final byte[] formKey;
  private final WallClock clock;

  /**
   * A gate.
   *
   * @param formKey random, of this start: signs form tokens
   */
  Gate(PageOptions options, Tokens tokens, byte[] formKey, WallClock clock) {
    this.tokens = tokens;
    this.formKey = formKey.clone();
    this.clock = clock;
    secure = options.isSecure();
    classViewFrom = options.classViewFrom();
    InetSocketAddress address = options.address();
    loopback = address.getAddress().isLoopbackAddress();
  }

  /** Refuses a call that came under a name that is not this computer's. */
  void checkHost(Call call) {
    String host = call.header("Host");
    if (host == null || loopback && !LOOPBACK_NAMES.contains(nameOf(host))) {
      throw new PageException(421, "page.error.host");
    }
  }

  private static String nameOf(String host) {
    int colon = host.lastIndexOf(':');
    return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
  }

  /** Refuses what a script of another site asks for; a link from there is allowed. */
  void checkSite(Call call) {
    String site = call.header("Sec-Fetch-Site");
    boolean foreign = "cross-site".equals(site) || "same-site".equals(site);
    if (foreign && !"navigate".equals(call.header("Sec-Fetch-Mode"))) {
      throw new PageException(403, "page.error.site");
    }
  }

  /** Refuses a form that does not come from a page of this booth. */
  void checkForm(Call call, Map<String, String> form, Visitor visitor) {
    boolean ours = isOwnOrigin(call);
    if (!ours || !Secrets.same(visitor.formToken(), form.getOrDefault(Layout.FORM_TOKEN, ""))) {
      throw new PageException(403, "page.error.form");
    }
  }

  /** True if the call names this page's own origin. */
  private boolean isOwnOrigin(Call call) {
    String own = (secure ? "https://" : "http://") + call.header("Host");
    return own.equals(call.header("Origin"));
  }

  /** The origin of another booth's class view that may look at this one; null if it is none. */
  String classViewOf(Call call) {
    String origin = call.header("Origin");
    return origin != null && classViewFrom.contains(origin) && !isOwnOrigin(call) ? origin : null;
  }

  /** Who asks, by cookie; everybody is the instructor where no token is asked for. */
  Visitor visitor(Call call) {
    if (tokens.isOpen()) {
      return new Visitor(Role.INSTRUCTOR, formToken("open"), false);
    }
    String cookie = cookie(call);
    Role role = tokens.roleOfCookie(cookie, nowSeconds());
    return new Visitor(role, formToken(role == null ? "" : cookie), role != null);
  }

  /** Who asks, by the token in its header; only for what can be read by other origins. */
  Visitor bearer(Call call) {
    String authorization = call.header("Authorization");
    if (tokens.isOpen()) {
      return visitor(call);
    }
    boolean shown = authorization != null && authorization.startsWith(BEARER);
    Role role = shown ? tokens.roleOf(authorization.substring(BEARER.length())) : null;
    return new Visitor(role, "", false);
  }

  private String formToken(String session) {
    return Secrets.digest(formKey, "form of " + session);
  }

  private String cookie(Call call) {
    String header = call.header("Cookie");
    for (String pair : header == null ? new String[0] : header.split(";")) {
      String[] parts = pair.strip().split("=", 2);
      if (parts.length == 2 && parts[0].equals(tokens.cookieName())) {
        return parts[1];
      }
    }
    return null;
  }

  /** The cookie of somebody who showed a token; null if no role has it. */
  String signOn(String token) {
    Role role = tokens.roleOf(token);
    return role == null
        ? null
        : setCookie(tokens.cookie(role, nowSeconds()), Tokens.COOKIE_SECONDS);
  }

  /** Ends a cookie. */
  String signOff() {
    return setCookie("", 0);
  }

  private String setCookie(String value, long seconds) {
    return tokens.cookieName()
        + "="
        + value
        + "; Path=/; Max-Age="
        + seconds
        + "; HttpOnly; SameSite=Strict"
        + (secure ? "; Secure" : "");
  }

  private long nowSeconds() {
    return clock.epochMillis() / 1_000;
  }
}
