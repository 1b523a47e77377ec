package org.boothlamp.words;

import java.util.Locale;

/** The languages that screens speak. */
public enum Language {
  ENGLISH("en"),
  SPANISH("es");

  private final String code;

  Language(String code) {
    this.code = code;
  }

  /** ISO 639 code, as in booth.toml and in a page's markup. */
  public String code() {
    return code;
  }

  Locale locale() {
    return Locale.forLanguageTag(code);
  }
}
