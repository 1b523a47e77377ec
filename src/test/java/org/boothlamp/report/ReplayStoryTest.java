package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.health.HealthFault;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReplayStoryTest {

  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  private static String at(WeldReplay replay, double seconds) {
    return at(replay, seconds, ENGLISH);
  }

  private static String at(WeldReplay replay, double seconds, Phrases phrases) {
    return ReplayStory.of(replay, phrases).at(seconds).says().replace(Numbers.GLUE, ' ');
  }

  private static TraceBuilder settled() {
    return new TraceBuilder().burn(1, 110, 23, Signal.SETTLING);
  }

  @Test
  void shouldSayWhatEachPartOfARunWas() {
    WeldReplay replay =
        settled()
            .burn(2, 110, 23, Signal.GREEN)
            .burn(1, 110, 25.7, Signal.AMBER)
            .of(run().length(4));
    assertTrue(at(replay, 0.2).startsWith("The arc burns"), at(replay, 0.2));
    assertEquals("Inside the window.", at(replay, 1.5));
    assertEquals("Inside, volts near the upper limit of 26 V.", at(replay, 3.9));
    assertEquals("The run is over after 4.0 s: the arc went off.", at(replay, 4.5));
  }

  @Test
  void shouldTellAnExcursionWithItsLimitLengthAndWorst() {
    WeldReplay replay =
        settled()
            .burn(3, 90, 28, Signal.RED)
            .of(
                run()
                    .length(4)
                    .excursion(Quantity.VOLTS, Side.HIGH, 1.0, 2.0, 28.94)
                    .excursion(Quantity.AMPS, Side.LOW, 1.5, 2.5, 88));
    assertEquals("Outside: volts above 26 V for 2.0 s, at worst 28.9 V.", at(replay, 1.2));
    assertEquals(
        "Outside: volts above 26 V for 2.0 s, at worst 28.9 V; amps below 95 A for 2.5 s, at worst"
            + " 88.0 A.",
        at(replay, 2.0));
    assertEquals("Outside: amps below 95 A for 2.5 s, at worst 88.0 A.", at(replay, 3.5));
  }

  @Test
  void shouldTellARedLampThatOnlyHoldsFromAShortStepOutside() {
    WeldReplay replay =
        settled()
            .burn(0.2, 110, 23, Signal.GREEN)
            .burn(1, 110, 29, Signal.RED)
            .burn(1, 110, 23, Signal.RED)
            .of(run().length(3.2));
    assertEquals("Outside: volts above 26 V.", at(replay, 2.1));
    assertEquals("Inside again; the lamp holds red for half a second.", at(replay, 3.1));
  }

  @Test
  void shouldPutWhatCannotBeTrustedFirst() {
    RunRecord run = run().length(2).excursion(Quantity.VOLTS, Side.HIGH, 0.5, 1.5, 28).build();
    EventRecord frozen =
        new EventRecord("frozen voltage", true, run.startWallMillis() + 500, 0.5, 1, 0, "");
    WeldTrace trace = new TraceBuilder().burn(1.5, 110, 28, Signal.FAULT).miss(0.5).build();
    WeldReplay replay = new WeldReplay(run, trace, List.of(frozen));
    assertEquals(
        "Do not trust amps and volts here: the voltage stood still to the count, as no arc does.",
        at(replay, 0.7));
    assertEquals("Do not trust amps and volts here: the lamp was in fault.", at(replay, 0.2));
    assertEquals("Nothing was measured here.", at(replay, 1.7));
  }

  @Test
  void shouldTellAnInterruptionOfTheArc() {
    WeldReplay replay =
        settled()
            .burn(0.2, 0.5, 70, Signal.GREEN)
            .burn(1, 110, 23, Signal.GREEN)
            .of(run().length(2.2));
    assertEquals("The arc is out for a moment.", at(replay, 1.1));
  }

  @Test
  void shouldSayThatNothingIsJudgedWithoutAProcedure() {
    WeldReplay replay =
        new TraceBuilder().burn(2, 110, 23, Signal.SETTLING).of(run().length(2).noProcedure());
    assertEquals("No procedure was loaded: nothing is judged.", at(replay, 1));
  }

  @Test
  void shouldCoverTheWholeRunWithoutHoles() {
    WeldReplay replay =
        settled()
            .burn(2, 110, 23, Signal.GREEN)
            .burn(1, 110, 28, Signal.RED)
            .of(run().length(4).excursion(Quantity.VOLTS, Side.HIGH, 3.0, 1, 28));
    double end = 0;
    for (ReplaySpell spell : ReplayStory.of(replay, ENGLISH).spells()) {
      assertEquals(end, spell.fromSeconds(), 1e-9);
      assertTrue(spell.untilSeconds() > spell.fromSeconds());
      end = spell.untilSeconds();
    }
    assertTrue(Double.isInfinite(end));
  }

  @ParameterizedTest
  @EnumSource
  void shouldHaveWordsForEveryFaultOfTheSensors(HealthFault fault) {
    for (Language language : Language.values()) {
      assertTrue(
          Phrases.in(language).has("replay.fault." + fault.word().replace(' ', '-')),
          fault + " " + language);
    }
  }

  @Test
  void shouldSayTheSameInSpanish() {
    WeldReplay replay =
        settled()
            .burn(1, 110, 28, Signal.RED)
            .of(run().length(2).excursion(Quantity.VOLTS, Side.HIGH, 1.0, 1, 28.5));
    assertEquals(
        "Fuera: voltaje por encima de 26 V durante 1.0 s, en el peor momento 28.5 V.",
        at(replay, 1.5, Phrases.in(Language.SPANISH)));
  }
}
