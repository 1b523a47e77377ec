package org.boothlamp.acquisition;

import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.SampleSourceContract;
import org.junit.jupiter.api.Nested;

/** The simulated booth keeps what every source keeps, whatever is welded and however fast. */
class SimulatedSourceContractTest {

  private static final PairScale SCALE =
      new PairScale(new ChannelScale(0.25, 0), new ChannelScale(0.025, 0));

  /** Runs of 3 s, so that their beginnings and ends are among the reads. */
  private static SimulatedSource endless(String process) {
    return SimulatedSource.endless(
        new SimulatedSettings(process, 5_000, 7, 0, 0.5, 1, 3), SCALE, NanoClock.SYSTEM);
  }

  @Nested
  class Stick extends SampleSourceContract {

    @Override
    protected SampleSource open() {
      return endless("stick");
    }
  }

  @Nested
  class ShortArc extends SampleSourceContract {

    @Override
    protected SampleSource open() {
      return endless("short-arc");
    }
  }

  @Nested
  class TigOnAlternatingCurrent extends SampleSourceContract {

    @Override
    protected SampleSource open() {
      return endless("tig-ac");
    }
  }

  @Nested
  class StickInRealTime extends SampleSourceContract {

    private final HandTurnedClock clock = new HandTurnedClock();

    @Override
    protected SampleSource open() {
      SimulatedSettings settings = new SimulatedSettings("stick", 5_000, 7, 1, 0.5, 1, 3);
      SimulatedSensor sensor = SimulatedSensor.of(SCALE).atRate(settings.pairsPerSecond());
      SimulatedPlay play =
          new SimulatedPlay(
              settings.booth(),
              sensor,
              SimulatedRunListener.NONE,
              SimulatedPlay.LONGEST_STEP_SECONDS);
      return new SimulatedSource(play, sensor, settings.speed(), clock, clock::advanceNanos);
    }
  }
}
