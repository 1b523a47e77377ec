package org.boothlamp.words;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;

/**
 * What screens say in one language, from {@code phrases_CODE.properties} beside this class. Numbers
 * come in as text, so that their digits are the same in every language. Safe for any thread.
 */
public final class Phrases {

  private static final Control NO_OTHER_LANGUAGE =
      Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);

  private final Language language;
  private final ResourceBundle bundle;

  private Phrases(Language language) {
    this.language = language;
    bundle =
        ResourceBundle.getBundle(
            Phrases.class.getPackageName() + ".phrases", language.locale(), NO_OTHER_LANGUAGE);
  }

  /** All that is said in a language. */
  public static Phrases in(Language language) {
    return new Phrases(language);
  }

  public Language language() {
    return language;
  }

  /**
   * A phrase with its places filled in.
   *
   * @param key what to say
   * @param parts text for the places {0}, {1} …; a number chooses a plural only
   * @throws java.util.MissingResourceException if no phrase has this key: a slip in the program
   */
  public String say(String key, Object... parts) {
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(parts);
  }

  /** True if there is a phrase with this key. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /**
   * "1 run", "3 runs": the phrase KEY.one or KEY.other with the count in its place {0}.
   *
   * @param count 0 or more
   */
  public String count(String key, long count) {
    return say(key + (count == 1 ? ".one" : ".other"), Long.toString(count));
  }
}
