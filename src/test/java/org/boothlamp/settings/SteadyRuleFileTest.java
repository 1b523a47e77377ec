package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.report.SteadyRule;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SteadyRuleFileTest {

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void prepare() {
    refusals = new Refusals(folder, "steady.toml", SteadyRuleFile::read);
  }

  @Test
  void shouldReadTheExample() {
    assertEquals(
        List.of(new SteadyRule("", "", 10, 0.9, 5)),
        SteadyRuleFile.read(Path.of("config", "steady.toml")));
  }

  @Test
  void shouldReadARuleForOnePass() {
    Path file =
        refusals.write(
            """
            [[rule]]
            runs = 10
            least_percent = 90
            [[rule]]
            procedure = "S-3F-18"
            pass = "fill"
            runs = 5
            least_percent = 95
            """);
    assertEquals(
        List.of(new SteadyRule("", "", 10, 0.9, 0), new SteadyRule("S-3F-18", "fill", 5, 0.95, 0)),
        SteadyRuleFile.read(file));
  }

  @Test
  void shouldRefuseARowOfNoRuns() {
    assertEquals(
        "steady.toml:2: rule[1].runs: must be a whole number from 1 to 1000 runs, but is 0; write e.g."
            + " runs = 10",
        refusals.of("[[rule]]\nruns = 0\nleast_percent = 90\n"));
  }

  @Test
  void shouldRefuseARuleWithoutAShare() {
    assertEquals(
        "steady.toml:1: rule[1].least_percent: is missing; write e.g. least_percent = 90",
        refusals.of("[[rule]]\nruns = 10\n"));
  }

  @Test
  void shouldRefuseTwoRulesForTheSame() {
    String rule = "[[rule]]\nruns = 10\nleast_percent = 90\n";
    String refused = refusals.of(rule + rule);
    assertEquals(
        "steady.toml:5: rule[2].runs: must be said once for a procedure and pass, but there is a rule"
            + " for them already; keep one of the two rules",
        refused);
  }
}
