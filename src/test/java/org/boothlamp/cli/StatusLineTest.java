package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneOffset;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.Colour;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;

/** The line that a person watches during a run. */
class StatusLineTest {

  private static final long SEVEN_O_CLOCK = 7 * 3_600_000L;

  private static String lineAfter(PairScript script, Colour colour) {
    Window amps = Plans.amps(95, 125);
    Window volts = Plans.volts(20, 26);
    Monitor monitor =
        new Monitor(
            new ScriptedSource(5000).pairs(script, 50),
            new SignalRecorder(),
            entry -> true,
            () -> 0,
            new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
            new Assignment("T-04", Plans.of(Polarity.DC_PLUS, amps, volts)));
    while (monitor.step()) {
      // the step is the work
    }
    return new StatusLine(colour, ZoneOffset.UTC).of(monitor.status(), SEVEN_O_CLOCK);
  }

  @Test
  void shouldShowValuesWindowsAndTheSideTheyAreOut() {
    assertEquals(
        "07:00:00  T-04  [R  ] red       110.0 A   95-125    28.0 V > 20-26    run   3.0 s",
        lineAfter(PairScript.at(5000).idle(1).arc(110, 28, 3), Colour.PLAIN));
  }

  @Test
  void shouldShowNoValuesWithoutAnArc() {
    assertEquals(
        "07:00:00  T-04  [  .] idle          - A   95-125       - V   20-26               ",
        lineAfter(PairScript.at(5000).idle(1), Colour.PLAIN));
  }

  @Test
  void shouldSayTheSameWithColour() {
    String plain = lineAfter(PairScript.at(5000).idle(1).arc(110, 23, 3), Colour.PLAIN);
    String coloured = lineAfter(PairScript.at(5000).idle(1).arc(110, 23, 3), Colour.ANSI);
    assertTrue(coloured.contains("\u001B[32m"));
    assertEquals(plain, coloured.replaceAll("\u001B\\[\\d*m", ""));
  }
}
