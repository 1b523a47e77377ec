package org.boothlamp.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Properties;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PhrasesTest {

  @Test
  void shouldSayTheSameThingsInEveryLanguage() throws IOException {
    Properties english = phrases(Language.ENGLISH);
    for (Language language : Language.values()) {
      assertEquals(places(english), places(phrases(language)), language + ": keys and places");
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldLeaveNothingUnsaid(Language language) throws IOException {
    phrases(language)
        .forEach((key, text) -> assertFalse(text.toString().isBlank(), language + " " + key));
  }

  @Test
  void shouldTranslateEveryPhrase() throws IOException {
    Properties english = phrases(Language.ENGLISH);
    Properties spanish = phrases(Language.SPANISH);
    long same =
        english.stringPropertyNames().stream()
            .filter(key -> english.getProperty(key).equals(spanish.getProperty(key)))
            .filter(key -> !key.startsWith("same."))
            .count();
    assertEquals(0, same, "phrases left in English; those that are alike are named same.…");
  }

  @Test
  void shouldFillPlacesAndChooseThePlural() {
    assertEquals("1 run", Phrases.in(Language.ENGLISH).count("run", 1));
    assertEquals("0 cordones", Phrases.in(Language.SPANISH).count("run", 0));
  }

  @Test
  void shouldNotFallBackToAnotherLanguage() {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.forLanguageTag("es"));
    try {
      assertEquals("inside", Phrases.in(Language.ENGLISH).say("signal.green"));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void shouldKnowWhichPhrasesThereAre() {
    Phrases phrases = Phrases.in(Language.SPANISH);
    assertTrue(phrases.has("nobody"));
    assertFalse(phrases.has("nothing of this name"));
    assertThrows(MissingResourceException.class, () -> phrases.say("nothing of this name"));
  }

  private static TreeMap<String, Integer> places(Properties phrases) {
    TreeMap<String, Integer> places = new TreeMap<>();
    for (String key : phrases.stringPropertyNames()) {
      MessageFormat format = new MessageFormat(phrases.getProperty(key), Locale.ROOT);
      places.put(key, format.getFormatsByArgumentIndex().length);
    }
    return places;
  }

  private static Properties phrases(Language language) throws IOException {
    String name = "phrases_" + language.code() + ".properties";
    Properties phrases = new Properties();
    try (Reader reader =
        new InputStreamReader(
            PhrasesTest.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
      phrases.load(reader);
    }
    return phrases;
  }
}
