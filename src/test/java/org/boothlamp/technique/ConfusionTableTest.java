package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Procedure;
import org.junit.jupiter.api.Test;

/**
 * Five hundred runs of the algebraic model, with noise, droop, wire, windows, sensors' errors and
 * mistakes drawn anew for each. The model is ours: checks against published figures and against
 * recordings of another simulator stand elsewhere.
 */
class ConfusionTableTest {

  private static final int RUNS = 500;

  /** One per cent, k = 2: the model draws the gains' errors by half of it. */
  private static final ChannelUncertainties UNCERTAINTIES =
      new ChannelUncertainties(
          new ExpandedUncertainty(0, 0.01), new ExpandedUncertainty(0, 0.01), true);

  private final Map<String, Map<String, Integer>> table = new TreeMap<>();
  private int spells;
  private int named;
  private int right;
  private int handForMachine;

  @Test
  void shouldNameTheRightCauseOrNone() {
    SplittableRandom random = new SplittableRandom(20_261_125);
    for (int run = 0; run < RUNS; run++) {
      ModelBooth booth = new ModelBooth(random.split());
      count(new ModelRun(booth, random.split()));
    }
    print();
    assertTrue(spells > RUNS / 2, "spells " + spells);
    assertEquals(0, handForMachine, "hand taken for machine, or machine for hand");
    assertTrue(right >= 0.95 * named, right + " right of " + named + " named");
    assertTrue(spells - named <= 0.10 * spells, (spells - named) + " not named of " + spells);
  }

  private void count(ModelRun run) {
    Procedure procedure = run.booth.procedure();
    TechniqueReader reader =
        new TechniqueReader(procedure, procedure.passes().get(0), UNCERTAINTIES, SchoolScales.NONE);
    for (ExplainedSpell spell : reader.read(run.profile(), run.spells(), RunFacts.NONE).spells()) {
      count(run.booth, run.truth(spell.spell()), spell);
    }
  }

  private void count(ModelBooth booth, ModelRun.Truth truth, ExplainedSpell spell) {
    spells++;
    named += spell.isNamed() ? 1 : 0;
    right += truth.allows(spell.cause()) ? 1 : 0;
    handForMachine += truth.isTakenForTheOther(spell.cause()) ? 1 : 0;
    table
        .computeIfAbsent(booth.process.word() + ", " + truth.word(), row -> new TreeMap<>())
        .merge(column(spell), 1, Integer::sum);
  }

  private static String column(ExplainedSpell spell) {
    return switch (spell.cause()) {
      case ARC_LONGER, STICK_OUT_LONGER -> "longer";
      case ARC_SHORTER, STICK_OUT_SHORTER -> "shorter";
      case MACHINE_SETTING -> "machine";
      case CANNOT_TELL -> "none: " + spell.doubt();
      case SLOPE, WHIP -> "other";
    };
  }

  private void print() {
    StringBuilder text = new StringBuilder("truth, and what was named:\n");
    table.forEach(
        (row, cells) -> text.append(String.format(Locale.ROOT, "  %-28s %s%n", row, cells)));
    text.append(
        String.format(
            Locale.ROOT,
            "%d runs, %d excursions: %.1f %% of the named right, %.1f %% cannot tell, %d hand for"
                + " machine or the other way%n",
            RUNS,
            spells,
            100.0 * right / named,
            100.0 * (spells - named) / spells,
            handForMachine));
    System.out.print(text);
  }
}
