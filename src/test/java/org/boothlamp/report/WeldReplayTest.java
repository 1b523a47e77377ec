package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import org.boothlamp.judging.Signal;
import org.junit.jupiter.api.Test;

class WeldReplayTest {

  @Test
  void shouldShowAmpsAndVoltsWithoutTheirDirection() {
    WeldReplay replay = new TraceBuilder().burn(2, -120, -20, Signal.GREEN).of(run().length(2));
    ReplayFrame frame = replay.frame(39);
    assertEquals(40, replay.frames());
    assertEquals(1.95, frame.seconds(), 1e-9);
    assertEquals(120, frame.amps());
    assertEquals(108, frame.lowestAmps(), 1e-9);
    assertEquals(132, frame.highestAmps(), 1e-9);
    assertEquals(20, frame.volts());
    assertEquals(120, frame.averageAmps(), 1e-9);
    assertEquals(Signal.GREEN, frame.signal());
  }

  @Test
  void shouldSayThatTheRunIsOverBeyondItsLastFrame() {
    WeldReplay replay = new TraceBuilder().burn(1, 120, 20, Signal.GREEN).of(run().length(1));
    assertEquals(Signal.IDLE, replay.frame(20).signal());
    assertTrue(Double.isNaN(replay.frame(20).amps()));
  }

  @Test
  void shouldShowOnlyTheExtremesOfAnAlternatingCurrent() {
    WeldReplay replay =
        new TraceBuilder()
            .alternate(1, 150, 14, Signal.GREEN)
            .of(run().length(1).alternating(150, 14));
    ReplayFrame frame = replay.frame(10);
    assertTrue(Double.isNaN(frame.amps()));
    assertTrue(Double.isNaN(frame.averageVolts()));
    assertEquals(0, frame.lowestAmps());
    assertEquals(150, frame.highestAmps(), 0.2);
  }

  @Test
  void shouldAverageTheArcOfTheLastSecondWithoutItsStartAndItsInterruptions() {
    WeldReplay replay =
        new TraceBuilder()
            .burn(0.05, 40, 60, Signal.IDLE)
            .burn(0.5, 100, 22, Signal.SETTLING)
            .burn(0.2, 0, 70, Signal.SETTLING)
            .burn(0.5, 110, 24, Signal.GREEN)
            .burn(1, 120, 26, Signal.GREEN)
            .of(run().length(2.25));
    assertTrue(Double.isNaN(replay.frame(0).averageAmps()));
    assertEquals(100, replay.frame(14).averageAmps(), 1e-9);
    assertEquals(105, replay.frame(24).averageAmps(), 1e-9);
    assertEquals(23, replay.frame(24).averageVolts(), 1e-9);
    assertEquals(120, replay.frame(44).averageAmps(), 1e-9);
  }

  @Test
  void shouldBeginTheAverageAnewAfterAFault() {
    WeldReplay replay =
        new TraceBuilder()
            .burn(1, 100, 22, Signal.GREEN)
            .miss(0.1)
            .burn(0.2, 120, 24, Signal.SETTLING)
            .of(run().length(1.3));
    assertTrue(Double.isNaN(replay.frame(21).averageAmps()));
    assertEquals(120, replay.frame(24).averageAmps(), 1e-9);
  }

  @Test
  void shouldLayTwoRunsStartOverStartUntilBothAreOver() {
    WeldReplay one = new TraceBuilder().burn(2, 100, 22, Signal.GREEN).of(run().length(2));
    WeldReplay other = new TraceBuilder().burn(3, 110, 23, Signal.GREEN).of(run().length(3));
    SideBySide pair = new SideBySide(one, other);
    assertEquals(60, pair.frames());
    assertEquals(3, pair.lengthSeconds());
    assertEquals(40, new SideBySide(one, null).frames());
  }

  @Test
  void shouldCompareWhatBothCameTo() {
    WeldReplay one =
        new TraceBuilder()
            .burn(1.05, 100, 22, Signal.SETTLING)
            .burn(2, 100, 22, Signal.GREEN)
            .of(run().length(3.05).means(100, 22).levels(1, 0, 1, 1.05));
    WeldReplay other =
        new TraceBuilder()
            .burn(1.05, 100, 22, Signal.SETTLING)
            .burn(1, 100, 22, Signal.GREEN)
            .burn(2, 120, 22, Signal.AMBER)
            .of(run().length(4.05).means(112, 22).levels(3, 0, 0, 1.05).shortCircuits(-1));
    Map<String, ComparedFigure> figures = new HashMap<>();
    new SideBySide(one, other).figures().forEach(figure -> figures.put(figure.key(), figure));
    assertEquals(100, figures.get("mean_amps").one());
    assertEquals(112, figures.get("mean_amps").beside());
    assertEquals("50.0 %", figures.get("inside_percent").oneText().replace(Numbers.GLUE, ' '));
    assertEquals("-", figures.get("shorts_per_s").besideText());
    assertEquals(0, figures.get("amps_scatter_a").one(), 1e-6);
    assertTrue(figures.get("amps_scatter_a").beside() > 5);
    assertTrue(Double.isNaN(new SideBySide(one, null).figures().get(0).beside()));
  }
}
