package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicBoolean;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;

/** What a page can see of the monitor without the sampler waiting for it. */
class LiveFeedTest {

  private static final int RATE = 5_000;
  private static final JudgingPlan FILL =
      Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), Plans.volts(20, 26));

  private static Monitor monitor(PairScript script) {
    return new Monitor(
        new ScriptedSource(RATE).pairs(script, 50),
        new SignalRecorder(),
        new EntryCollector(),
        () -> 0,
        new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
        new Assignment("T-01", FILL));
  }

  private static LiveSnapshot after(Monitor monitor, double seconds) {
    for (int k = 0; k < seconds * RATE / 50; k++) {
      monitor.step();
    }
    LiveSnapshot snapshot = new LiveSnapshot();
    monitor.live().read(snapshot);
    return snapshot;
  }

  @Test
  void shouldTellSignalAveragesAndWhoOfOneStep() {
    Monitor monitor = monitor(PairScript.at(RATE).idle(1).arc(110, 23, 5));
    LiveSnapshot idle = after(monitor, 0.9);
    assertEquals(Signal.IDLE, idle.signal);
    assertTrue(Double.isNaN(idle.amps));
    LiveSnapshot arc = after(monitor, 4);
    assertEquals(Signal.GREEN, arc.signal);
    assertTrue(arc.arc);
    assertEquals(110, arc.amps, 0.1);
    assertEquals(23, arc.volts, 0.1);
    assertEquals("T-01", arc.assignment.trainee());
  }

  @Test
  void shouldKeepTracePointsOfEachRunFromItsStart() {
    Monitor monitor =
        monitor(PairScript.at(RATE).idle(1).arc(110, 23, 2).idle(1).arc(120, 24, 1).idle(1));
    LiveSnapshot now = after(monitor, 6);
    assertEquals(2, now.run);
    int last = (int) (now.points - 1);
    assertEquals(2, now.pointRun[last]);
    assertEquals(60, now.points, 2);
    assertEquals(19, now.pointIndex[last], 1);
    assertEquals(0, now.pointIndex[0]);
    assertEquals(110, now.pointAmps[20], 0.2);
    assertEquals(23, now.pointAverageVolts[39], 0.2);
    assertTrue(Float.isNaN(now.pointAverageVolts[10]), "not judged in the first second");
  }

  @Test
  void shouldForgetTheOldestPointsOfALongRun() {
    LiveSnapshot now = after(monitor(PairScript.at(RATE).idle(1).arc(110, 23, 60)), 60);
    assertTrue(now.points > LiveFeed.POINTS);
    assertEquals(now.points - LiveFeed.POINTS, now.firstPoint());
    assertEquals(now.firstPoint(), now.pointIndex[(int) (now.firstPoint() % LiveFeed.POINTS)]);
  }

  /** A torn reading would show amps and volts of two steps. */
  @Test
  void shouldNeverMixTwoSteps() throws InterruptedException {
    LiveFeed feed = new LiveFeed();
    AtomicBoolean done = new AtomicBoolean();
    Thread sampler =
        new Thread(
            () -> {
              for (int k = 0; !done.get(); k++) {
                feed.set(Signal.GREEN, k, -k, k, true, Assignment.NONE);
              }
            });
    sampler.start();
    LiveSnapshot snapshot = new LiveSnapshot();
    while (snapshot.steps == 0) {
      feed.read(snapshot);
    }
    int torn = 0;
    for (int k = 0; k < 20_000; k++) {
      feed.read(snapshot);
      torn += snapshot.amps == -snapshot.volts && snapshot.amps == snapshot.arcSeconds ? 0 : 1;
    }
    done.set(true);
    sampler.join();
    assertEquals(0, torn);
  }
}
