package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.technique.Beat;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.Evidence;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Reference;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.Steadiness;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferState;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TechniqueWordsTest {

  private static final Evidence LONG_ARC =
      new Evidence(Reference.OWN_STEADY_PART, 107, 27, -6, 5.5, 0.5, 0.4, -1.2, 0.1);

  private static ExplainedSpell spell(Cause cause, Quantity quantity, Side side, double at) {
    return explained(new Spell(quantity, side, at, at + 1), cause, Doubt.NONE, Estimate.UNKNOWN);
  }

  private static ExplainedSpell explained(Spell spell, Cause cause, Doubt doubt, Estimate mm) {
    return new ExplainedSpell(spell, cause, doubt, LONG_ARC, 0.999, mm);
  }

  private static ExplainedSpell longArc(double at) {
    return spell(Cause.ARC_LONGER, Quantity.VOLTS, Side.HIGH, at);
  }

  private static String sentence(TransferState state, ExplainedSpell... spells) {
    return new TechniqueWords(Phrases.in(Language.ENGLISH), Units.METRIC)
        .sentence(reading(state, spells), 60)
        .replace(Numbers.GLUE, ' ');
  }

  private static TechniqueReading reading(TransferState state, ExplainedSpell... spells) {
    return new TechniqueReading(
        List.of(spells),
        new Steadiness(Quantity.VOLTS, 22, 0.5, 0, 1, 0),
        Estimate.UNKNOWN,
        null,
        state,
        null,
        Beat.NONE);
  }

  @Test
  void shouldSayWhatHappenedHowOftenWhereAndWhatItMeans() {
    assertEquals(
        "Volts rose and amps fell three times near the end: arc getting long.",
        sentence(TransferState.NOT_MEASURED, longArc(45), longArc(50), longArc(57)));
    assertEquals(
        "Volts rose and amps fell twice: arc getting long.",
        sentence(TransferState.NOT_MEASURED, longArc(5), longArc(50)));
  }

  @Test
  void shouldCountVoltsAndAmpsThatWereOutsideTogetherOnce() {
    assertEquals(
        "Volts rose and amps fell twice: arc getting long.",
        sentence(
            TransferState.NOT_MEASURED,
            longArc(5),
            spell(Cause.ARC_LONGER, Quantity.AMPS, Side.LOW, 5.5),
            longArc(50)));
  }

  @Test
  void shouldGiveMillimetresOnlyWhereTheyAreKnown() {
    assertEquals(
        "Volts rose and amps fell once near the start: arc getting long, by up to 2.8 mm, give or"
            + " take 0.6 mm.",
        sentence(
            TransferState.NOT_MEASURED,
            explained(longArc(5).spell(), Cause.ARC_LONGER, Doubt.NONE, new Estimate(2.75, 0.3))));
  }

  @Test
  void shouldNotBlameTheHandForTheMachine() {
    assertEquals(
        "Amps high and volts high from the first second: check the machine's setting, not the"
            + " hand.",
        sentence(
            TransferState.STEADY,
            spell(Cause.MACHINE_SETTING, Quantity.AMPS, Side.HIGH, 1),
            spell(Cause.MACHINE_SETTING, Quantity.VOLTS, Side.HIGH, 1)));
  }

  @Test
  void shouldSayThatItCannotTellAndBetweenWhat() {
    Spell spell = new Spell(Quantity.AMPS, Side.LOW, 1, 20);
    assertEquals(
        "Amps low once: cannot tell why (stick-out too long, or wire feed set too low).",
        sentence(
            TransferState.STEADY,
            explained(spell, Cause.CANNOT_TELL, Doubt.STICK_OUT_OR_FEED, Estimate.UNKNOWN)));
  }

  @Test
  void shouldSayNothingOfCraterFillWhippingAndASteadyTransfer() {
    Spell spell = new Spell(Quantity.AMPS, Side.LOW, 58, 60);
    assertEquals(
        "",
        sentence(
            TransferState.STEADY,
            explained(spell, Cause.SLOPE, Doubt.NONE, Estimate.UNKNOWN),
            explained(spell, Cause.WHIP, Doubt.NONE, Estimate.UNKNOWN)));
  }

  @Test
  void shouldSayWhatTheTransferLacks() {
    assertEquals(
        "Short circuits are few and short: too hot, the arc is leaving short-circuit.",
        sentence(TransferState.TOO_HOT));
    assertEquals(
        "Short circuits are too long: too cold, the wire is stubbing.",
        sentence(TransferState.TOO_COLD));
  }

  @Test
  void shouldSayTheSameInSpanishAndInInches() {
    TechniqueReading reading =
        reading(
            TransferState.UNEVEN,
            explained(longArc(5).spell(), Cause.ARC_LONGER, Doubt.NONE, new Estimate(2.54, 0.254)));
    TechniqueWords spanish = new TechniqueWords(Phrases.in(Language.SPANISH), Units.INCH_POUND);
    assertEquals(
        "Los voltios subieron y los amperios bajaron una vez cerca del principio: el arco se"
            + " alarga, hasta 0.1 in, con un margen de 0.02 in. Los cortocircuitos llegan de forma"
            + " irregular.",
        spanish.sentence(reading, 60).replace(Numbers.GLUE, ' '));
  }

  @ParameterizedTest
  @EnumSource
  void shouldHaveWordsForEveryCauseAndDoubtInEveryLanguage(Language language) {
    TechniqueWords words = new TechniqueWords(Phrases.in(language), Units.METRIC);
    for (Cause cause : Cause.values()) {
      assertFalse(words.cause(cause).isEmpty());
    }
    for (Doubt doubt : Doubt.values()) {
      for (Side side : Side.values()) {
        Spell spell = new Spell(Quantity.AMPS, side, 1, 2);
        TechniqueReading reading =
            reading(
                TransferState.STEADY, explained(spell, Cause.CANNOT_TELL, doubt, Estimate.UNKNOWN));
        assertTrue(words.sentence(reading, 60).endsWith(")."));
      }
    }
  }

  @Test
  void shouldSayWhyARunLeftItsWindowsBelowIt() {
    RunRecord run =
        RunBuilder.run()
            .excursion(Quantity.VOLTS, Side.HIGH, 8, 1, 27)
            .technique(reading(TransferState.NOT_MEASURED, longArc(8)))
            .build();
    TextPage page = new TextPage(80, Colour.PLAIN);
    new RunRow(page, List.of()).append("17:42", new RunSummary(run, List.of(), List.of()));
    assertTrue(
        page.toString().contains("\n            Volts rose and amps fell once near the end: arc"),
        page.toString());
  }

  @Test
  void shouldCountTheCauseThatCameMostOften() {
    RunRecord one =
        RunBuilder.run()
            .technique(
                reading(
                    TransferState.STEADY,
                    longArc(3),
                    longArc(6),
                    spell(Cause.CANNOT_TELL, Quantity.AMPS, Side.LOW, 8),
                    spell(Cause.SLOPE, Quantity.AMPS, Side.LOW, 9)))
            .build();
    RunRecord other = RunBuilder.run().technique(reading(TransferState.STEADY, longArc(3))).build();
    TechniqueWords words = new TechniqueWords(Phrases.in(Language.ENGLISH), Units.METRIC);
    assertEquals(
        "Why, most often: arc getting long, in 3 of 4.", words.mostOften(List.of(one, other)));
    assertEquals("", words.mostOften(List.of(RunBuilder.run().build())));
  }
}
