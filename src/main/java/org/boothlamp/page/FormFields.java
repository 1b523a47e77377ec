package org.boothlamp.page;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** Decodes queries and forms ({@code application/x-www-form-urlencoded}). */
final class FormFields {

  private static final int MOST_FIELDS = 30;

  private FormFields() {}

  /**
   * The fields; of two with one name the first.
   *
   * @throws PageException if it cannot be decoded or holds too many
   */
  static Map<String, String> of(String encoded) {
    Map<String, String> fields = new HashMap<>();
    if (encoded == null || encoded.isEmpty()) {
      return fields;
    }
    for (String field : encoded.split("&", MOST_FIELDS + 2)) {
      int equals = field.indexOf('=');
      String name = equals < 0 ? field : field.substring(0, equals);
      fields.putIfAbsent(decoded(name), equals < 0 ? "" : decoded(field.substring(equals + 1)));
      if (fields.size() > MOST_FIELDS) {
        throw new PageException(400, "page.error.request");
      }
    }
    return fields;
  }

  private static String decoded(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException broken) {
      throw new PageException(400, "page.error.request");
    }
  }
}
