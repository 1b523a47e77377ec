package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever a trainee does, the sensors of the simulated booth are sound, and must be taken so. */
class SimulatedHealthTest {

  private static final int RUNS = 4;
  private static final double ARC_SECONDS = 8;
  private static final long[] SEEDS = {1, 20, 20_240_607};

  private static Stream<Arguments> booths() {
    List<Arguments> booths = new ArrayList<>();
    for (SimulatedProcess process : SimulatedProcess.values()) {
      for (long seed : SEEDS) {
        booths.add(Arguments.of(process, "beginner", SimulatedTrainee.beginner(), seed));
        booths.add(Arguments.of(process, "good", SimulatedTrainee.good(), seed));
      }
    }
    return booths.stream();
  }

  private static Polarity polarityOf(SimulatedProcess process) {
    return switch (process) {
      case STICK, SHORT_ARC -> Polarity.DC_PLUS;
      case TIG -> Polarity.DC_MINUS;
      case TIG_AC -> Polarity.AC;
    };
  }

  @ParameterizedTest(name = "{0}, {1}, seed {3}")
  @MethodSource("booths")
  void shouldFindNoFaultInSoundSensors(
      SimulatedProcess process, String name, SimulatedTrainee trainee, long seed) {
    EntryCollector log = new EntryCollector();
    SimulatedBooth booth = SimulatedBooth.repeated(process, trainee, RUNS, ARC_SECONDS, seed);
    Monitor monitor =
        new Monitor(
            SimulatedTrials.unhindered(booth),
            new SignalRecorder(),
            log,
            () -> 0,
            new PipelineSettings(SimulatedTrials.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
            new Assignment("T-01", Plans.of(polarityOf(process), Plans.amps(80, 160))));
    while (monitor.step()) {
      // the step is the work
    }
    monitor.close();
    assertEquals(List.of(), events(log));
    assertTrue(log.of(LogEntry.Kind.SEGMENT_ENDED).size() >= RUNS);
  }

  private static List<String> events(EntryCollector log) {
    return log.of(LogEntry.Kind.EVENT_ENDED).stream()
        .map(event -> event.event.word() + " at " + event.startSeconds + " s")
        .toList();
  }
}
