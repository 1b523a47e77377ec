package org.boothlamp.page;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Headers of every answer: a browser runs only this page's own scripts, loads nothing from
 * elsewhere, and shows it in nobody's frame. Immutable.
 *
 * <p>No Strict-Transport-Security: it would hold for every other port of the same host, and a
 * school with a certificate of its own could not get past a mistake with it.
 */
final class SecurityHeaders {

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'%s;"
          + " form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

  /** Name of the header with the policy. */
  static final String POLICY_NAME = "Content-Security-Policy";

  /** The policy of a page that also plays sounds which its own script has fetched. */
  static final String POLICY_WITH_SOUND = POLICY.replace("%s", "") + "; media-src blob:";

  private final Map<String, String> headers = new TreeMap<>();

  /** Headers; scripts may also connect to these origins. */
  SecurityHeaders(List<String> connect) {
    StringBuilder others = new StringBuilder();
    connect.forEach(origin -> others.append(' ').append(origin));
    headers.put(POLICY_NAME, POLICY.replace("%s", others));
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("X-Frame-Options", "DENY");
    // "no-referrer" would make browsers send "Origin: null" with this page's own forms.
    headers.put("Referrer-Policy", "same-origin");
    headers.put("Cross-Origin-Opener-Policy", "same-origin");
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put(
        "Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()");
    headers.put("Cache-Control", "no-store");
  }

  /** The answer with all of them; those it has already stay. */
  Answer addTo(Answer answer) {
    Answer whole = answer;
    for (Map.Entry<String, String> header : headers.entrySet()) {
      if (!answer.headers().containsKey(header.getKey())) {
        whole = whole.with(header.getKey(), header.getValue());
      }
    }
    return whole;
  }
}
