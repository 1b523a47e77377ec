package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.junit.jupiter.api.Test;

class TechniqueSentenceTest {

  private static final Evidence LONG_ARC =
      new Evidence(Reference.OWN_STEADY_PART, 107, 27, -6, 5.5, 0.5, 0.4, -1.2, 0.1);

  private static ExplainedSpell spell(Cause cause, Quantity quantity, Side side, double at) {
    return ExplainedSpell.named(new Spell(quantity, side, at, at + 1), cause, LONG_ARC, 8);
  }

  private static ExplainedSpell longArc(double at) {
    return spell(Cause.ARC_LONGER, Quantity.VOLTS, Side.HIGH, at);
  }

  private static String sentence(TransferState state, ExplainedSpell... spells) {
    TechniqueReading reading =
        new TechniqueReading(
            List.of(spells),
            Steadiness.unknown(Quantity.VOLTS, 0),
            Estimate.UNKNOWN,
            null,
            state,
            null,
            PeriodicMovement.NONE);
    return TechniqueSentence.of(reading, 60);
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
  void shouldGiveMillimetresOnlyWhereTheyAreKnown() {
    assertEquals(
        "Volts rose and amps fell once near the start: arc getting long, by up to 2.8 mm, give or"
            + " take 0.6.",
        sentence(TransferState.NOT_MEASURED, longArc(5).withLengthChange(new Estimate(2.75, 0.3))));
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
            ExplainedSpell.doubtful(spell, Doubt.STICK_OUT_OR_FEED, LONG_ARC)));
  }

  @Test
  void shouldSayNothingOfCraterFillWhippingAndASteadyTransfer() {
    Spell spell = new Spell(Quantity.AMPS, Side.LOW, 58, 60);
    assertEquals(
        "",
        sentence(
            TransferState.STEADY,
            ExplainedSpell.certain(spell, Cause.SLOPE),
            ExplainedSpell.certain(spell, Cause.WHIP)));
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
}
