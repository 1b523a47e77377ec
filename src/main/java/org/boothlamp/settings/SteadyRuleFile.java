package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boothlamp.report.SteadyRule;

/** Reads the file in which a school says what it calls steady enough to try the test. */
public final class SteadyRuleFile {

  private static final Range RUNS = new Range(1, 1_000, "runs");
  private static final Range PERCENT = new Range(1, 100, "%");
  private static final Range SECONDS = new Range(0, 600, "s");

  private final Set<String> meant = new HashSet<>();

  private SteadyRuleFile() {}

  /**
   * Reads and checks a whole file.
   *
   * @throws SettingsException with all that is wrong with it, in line order
   */
  public static List<SteadyRule> read(Path file) {
    Problems problems = new Problems(file);
    Section document =
        TomlFile.read(
            problems, "check progress.rule_file in booth.toml, or write one after the example");
    List<SteadyRule> rules = new SteadyRuleFile().rules(document);
    document.refuseUnknown();
    problems.throwIfAny();
    return rules;
  }

  private List<SteadyRule> rules(Section document) {
    List<SteadyRule> rules = new ArrayList<>();
    for (Section section : document.sections("rule")) {
      rules.add(rule(section));
    }
    if (rules.isEmpty() && document.isSound("rule")) {
      document.refuse(
          "rule",
          "is missing: the file needs at least one rule",
          "write [[rule]] on a line of its own, and below it e.g. runs = 10, least_percent = 90");
    }
    return rules;
  }

  private SteadyRule rule(Section section) {
    String procedure = section.text("procedure", TextRule.NAME, "", "S-3F-18");
    String pass = section.text("pass", TextRule.NAME, "", "fill");
    long runs = section.requiredWhole("runs", RUNS, 10);
    double percent = section.requiredNumber("least_percent", PERCENT, 90);
    double judged = section.number("least_judged_s", SECONDS, 0);
    if (section.isSound("runs") && !meant.add(procedure + '\n' + pass)) {
      section.refuse(
          "runs",
          "must be said once for a procedure and pass, but there is a rule for them already",
          "keep one of the two rules");
    }
    return new SteadyRule(procedure, pass, (int) runs, percent / 100, judged);
  }
}
