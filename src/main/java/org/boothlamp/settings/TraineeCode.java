package org.boothlamp.settings;

import java.util.regex.Pattern;

/** What a trainee signs in with: a code and never a name. */
public final class TraineeCode {

  /** The rule for people, completing "must be ...". */
  public static final String RULE = "1 to 16 letters, digits, dots or hyphens";

  /** An underscore is let in as well. */
  private static final Pattern CODE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,15}");

  static final TextRule TEXT = new TextRule(RULE, CODE);

  private TraineeCode() {}

  /** True if a text has the form of a code. */
  public static boolean isOne(String text) {
    return CODE.matcher(text).matches();
  }
}
