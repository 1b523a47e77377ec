package org.boothlamp.settings;

import java.util.regex.Pattern;

/**
 * What a text in a file may look like.
 *
 * @param words the rule for people, completing "must be ..."
 * @param pattern matches the whole of a good text
 */
record TextRule(String words, Pattern pattern) {

  /** Names that appear in reports and on command lines. */
  static final TextRule NAME =
      new TextRule(
          "1 to 40 characters without line breaks and without blanks at either end",
          Pattern.compile("[^\\s\\p{Cntrl}]([^\\p{Cntrl}]{0,38}[^\\s\\p{Cntrl}])?"));

  /** No shell reads these files, so a ~ would become a folder of that name. */
  static final TextRule PATH =
      new TextRule(
          "a path that does not begin with ~",
          Pattern.compile("[^~\\s\\p{Cntrl}]([^\\p{Cntrl}]*[^\\s\\p{Cntrl}])?"));

  boolean allows(String text) {
    return pattern.matcher(text).matches();
  }
}
