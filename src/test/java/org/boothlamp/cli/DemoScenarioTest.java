package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.acquisition.SimulatedProcess;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.procedure.Process;
import org.junit.jupiter.api.Test;

/** The invented shift hangs together. */
class DemoScenarioTest {

  private final DemoScenario scenario = DemoScenario.shift();

  @Test
  void shouldSayWhoWeldsForEveryRun() {
    assertEquals(scenario.booth().runs().size(), scenario.assignments().size());
    Set<String> trainees =
        scenario.assignments().stream().map(Assignment::trainee).collect(Collectors.toSet());
    assertEquals(Set.of("T-04", "T-11", "T-17"), trainees);
  }

  @Test
  void shouldJudgeEachRunByAProcedureOfItsProcess() {
    for (int i = 0; i < scenario.assignments().size(); i++) {
      Process process = scenario.assignments().get(i).plan().procedure().process();
      SimulatedProcess welded = scenario.booth().runs().get(i).process();
      assertEquals(
          welded == SimulatedProcess.STICK ? Process.MANUAL_METAL_ARC : Process.MAG, process);
    }
  }

  @Test
  void shouldEndInAboutTwentySecondsAtItsOwnSpeed() {
    double seconds =
        scenario.booth().runs().stream()
            .mapToDouble(run -> run.pauseSeconds() + run.arcSeconds())
            .sum();
    // The hand adds touches and new starts to what the script asks for.
    assertTrue(seconds / 50 > 10 && seconds / 50 < 25, () -> "script of " + seconds + " s");
  }
}
