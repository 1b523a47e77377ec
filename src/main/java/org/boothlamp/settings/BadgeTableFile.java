package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** Reads badges.toml: a section [[badge]] for each. Confined to one thread during the reading. */
public final class BadgeTableFile {

  private static final TextRule BADGE =
      new TextRule(
          "1 to 64 printable characters without blanks, as the reader sends them",
          Pattern.compile("[!-~]{1,64}"));

  private final Map<String, String> trainees = new HashMap<>();

  private BadgeTableFile() {}

  /**
   * Reads and checks a whole file.
   *
   * @throws SettingsException with all that is wrong with it, in line order
   */
  public static BadgeTable read(Path file) {
    Problems problems = new Problems(file);
    Section document =
        TomlFile.read(problems, "check badge.table in booth.toml, or write one after the example");
    BadgeTableFile reading = new BadgeTableFile();
    document.sections("badge").forEach(reading::add);
    document.refuseUnknown();
    problems.throwIfAny();
    return new BadgeTable(reading.trainees);
  }

  private void add(Section section) {
    String badge = section.requiredText("code", BADGE, "0004711");
    boolean signsOut = section.flag("sign_out", false);
    if (signsOut) {
      section.refuseIfGiven("trainee", "must not stand beside sign_out = true: it signs nobody in");
    }
    String trainee = signsOut ? "" : section.requiredText("trainee", TraineeCode.TEXT, "T-04");
    if (section.isSound("code") && trainees.putIfAbsent(badge, trainee) != null) {
      section.refuse(
          "code",
          "must be said once, but there is a badge " + Literal.of(badge) + " already",
          "keep one of the two");
    }
  }
}
