package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A simulated shift must not be something to wait for; in time of the processor, not the wall. */
@Tag("quiet")
class SimulatedSpeedIT {

  private static final double LEAST_TIMES_REAL_TIME = 100;

  @ParameterizedTest
  @EnumSource
  void shouldRunAHundredTimesFasterThanRealTime(SimulatedProcess process) {
    SimulatedTrials.drain(source(process, 20));
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadCpuTime();
    double seconds = SimulatedTrials.drain(source(process, 100)) / 5_000.0;
    double spent = (threads.getCurrentThreadCpuTime() - before) / 1e9;
    assertTrue(seconds / spent > LEAST_TIMES_REAL_TIME, () -> seconds + " s took " + spent + " s");
  }

  private static SimulatedSource source(SimulatedProcess process, double arcSeconds) {
    return SimulatedTrials.unhindered(
        SimulatedBooth.repeated(process, SimulatedTrainee.good(), 5, arcSeconds, 1));
  }
}
