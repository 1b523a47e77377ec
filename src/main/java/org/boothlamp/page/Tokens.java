package org.boothlamp.page;

import java.util.EnumMap;
import java.util.Map;

/**
 * The token of each role, and the cookie that says a browser has shown one. The cookie holds role,
 * end and a digest of both under a key made of the token: a new token ends all of its cookies, and
 * a restart none. Immutable.
 */
final class Tokens {

  /** A school day; then it is asked again. */
  static final long COOKIE_SECONDS = 12 * 3_600;

  private final String booth;
  private final Map<Role, String> tokens = new EnumMap<>(Role.class);

  /** Tokens of some roles; of none if everybody may everything. */
  Tokens(String booth, Map<Role, String> tokens) {
    this.booth = booth;
    this.tokens.putAll(tokens);
  }

  /** True if nobody has to show a token. */
  boolean isOpen() {
    return tokens.isEmpty();
  }

  /** Name of the cookie: those of several booths on one host must not be mixed up. */
  String cookieName() {
    return "booth-" + booth;
  }

  /** The role of a token, or null; looks at all of them, in the same time. */
  Role roleOf(String shown) {
    Role found = null;
    for (Map.Entry<Role, String> entry : tokens.entrySet()) {
      if (Secrets.same(entry.getValue(), shown)) {
        found = entry.getKey();
      }
    }
    return found;
  }

  /** The cookie's value for a role that showed its token. */
  String cookie(Role role, long nowSeconds) {
    String claim = role.word() + "." + (nowSeconds + COOKIE_SECONDS);
    return claim + "." + seal(role, claim);
  }

  /** The role of a cookie; null if it is not ours, or over. */
  Role roleOfCookie(String value, long nowSeconds) {
    String[] parts = value == null ? new String[0] : value.split("\\.", 4);
    if (parts.length != 3 || !parts[1].matches("[0-9]{1,12}")) {
      return null;
    }
    Role role = Role.ofWord(parts[0]);
    if (role == null || !tokens.containsKey(role) || Long.parseLong(parts[1]) < nowSeconds) {
      return null;
    }
    return Secrets.same(parts[2], seal(role, parts[0] + "." + parts[1])) ? role : null;
  }

  private String seal(Role role, String claim) {
    byte[] key = Secrets.bytes(tokens.get(role));
    return Secrets.digest(key, "cookie of booth " + booth + ": " + claim);
  }
}
