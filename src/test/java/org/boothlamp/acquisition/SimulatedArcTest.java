package org.boothlamp.acquisition;

import static org.boothlamp.acquisition.SimulatedProcess.SHORT_ARC;
import static org.boothlamp.acquisition.SimulatedProcess.STICK;
import static org.boothlamp.acquisition.SimulatedProcess.TIG;
import static org.boothlamp.acquisition.SimulatedTrials.assertBetween;
import static org.boothlamp.acquisition.SimulatedTrials.assertRising;
import static org.boothlamp.acquisition.SimulatedTrials.assertWithinPercent;
import static org.boothlamp.acquisition.SimulatedTrials.steadyBurn;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The physics, on averages of the truth. */
class SimulatedArcTest {

  private static final double ARC_SECONDS = 10;

  /** Direction after a trade press article on welding procedures (1997): volts up, amps down. */
  @ParameterizedTest
  @EnumSource(names = {"STICK", "TIG", "TIG_AC"})
  void shouldLiftVoltsAndDropAmpsWhenTheArcIsLongerOnConstantCurrent(SimulatedProcess process) {
    SimulatedBurn close = steadyBurn(process, 0.8, ARC_SECONDS);
    SimulatedBurn right = steadyBurn(process, 1, ARC_SECONDS);
    SimulatedBurn far = steadyBurn(process, 1.5, ARC_SECONDS);
    assertRising(close.meanVolts(), right.meanVolts(), far.meanVolts());
    assertRising(far.meanAmps(), right.meanAmps(), close.meanAmps());
    double voltsChange = far.meanVolts() / right.meanVolts() - 1;
    double ampsChange = 1 - far.meanAmps() / right.meanAmps();
    assertTrue(ampsChange < voltsChange);
  }

  /** Common practice, no source for the size. */
  @Test
  void shouldDropAmpsWhenTheStickOutIsLongerOnConstantVoltage() {
    SimulatedBurn close = steadyBurn(SHORT_ARC, 0.8, ARC_SECONDS);
    SimulatedBurn right = steadyBurn(SHORT_ARC, 1, ARC_SECONDS);
    SimulatedBurn far = steadyBurn(SHORT_ARC, 1.5, ARC_SECONDS);
    assertRising(far.meanAmps(), right.meanAmps(), close.meanAmps());
    assertEquals(right.meanVolts(), far.meanVolts(), 1.0);
  }

  /**
   * Conventional load voltages of IEC 60974-1: 20 + 0.04 I stick, 10 + 0.04 I TIG, 14 + 0.05 I MAG.
   * They are one line for all of a process; short-circuit transfer lies at their lower end.
   */
  @ParameterizedTest
  @CsvSource({"STICK, 20, 0.04, -15, 15", "TIG, 10, 0.04, -20, 10", "SHORT_ARC, 14, 0.05, -30, 5"})
  void shouldBurnNearTheConventionalLoadVoltage(
      SimulatedProcess process,
      double atNoAmpsVolts,
      double voltsPerAmp,
      double leastPercent,
      double mostPercent) {
    SimulatedBurn burn = steadyBurn(process, 1, ARC_SECONDS);
    double conventional = atNoAmpsVolts + voltsPerAmp * burn.meanAmps();
    double percent = 100 * (burn.meanVolts() / conventional - 1);
    assertBetween(leastPercent, mostPercent, percent);
  }

  @ParameterizedTest
  @CsvSource({
    "STICK, 95, 125, 20, 26",
    "SHORT_ARC, 132, 152, 15, 18",
    "TIG, 85, 115, 10, 14",
    "TIG_AC, 85, 115, 10, 16"
  })
  void shouldLandInAUsualProcedureWithASteadyHand(
      SimulatedProcess process,
      double lowAmps,
      double highAmps,
      double lowVolts,
      double highVolts) {
    SimulatedBurn burn = steadyBurn(process, 1, ARC_SECONDS);
    assertBetween(lowAmps, highAmps, burn.meanAmps());
    assertBetween(lowVolts, highVolts, burn.meanVolts());
  }

  /** A textbook and a second source: 20 to over 200 short circuits a second. */
  @ParameterizedTest
  @CsvSource({"110", "142", "180"})
  void shouldShortTwentyToTwoHundredTimesASecondByItself(double setAmps) {
    SimulatedBurn burn = wireAt(setAmps);
    assertBetween(20.0, 200.0, burn.shortCircuits() / burn.flowingSeconds());
  }

  /** The same textbook: the rate rises with the wire feed. */
  @Test
  void shouldShortMoreOftenWithMoreWire() {
    assertTrue(wireAt(160).shortCircuits() > wireAt(120).shortCircuits());
  }

  private static SimulatedBurn wireAt(double setAmps) {
    SimulatedRun run =
        new SimulatedRun(1, SHORT_ARC, setAmps, SimulatedTrainee.steady(1), ARC_SECONDS);
    return SimulatedTrials.onlyBurn(SimulatedTrials.unhindered(SimulatedBooth.of(List.of(run), 5)));
  }

  /** Common practice, no source. */
  @Test
  void shouldBridgeAShortStickArcSomeTimesASecondAndATigArcNever() {
    SimulatedBurn stick = steadyBurn(STICK, 0.75, ARC_SECONDS);
    assertBetween(1.0, 15.0, stick.shortCircuits() / stick.flowingSeconds());
    assertEquals(0, steadyBurn(TIG, 0.8, ARC_SECONDS).shortCircuits());
  }

  /** What the source gives is lost in its own resistance or arrives at the torch. */
  @Test
  void shouldBalanceTheEnergyOfTheConstantVoltageCircuit() {
    SimulatedBurn burn = steadyBurn(SHORT_ARC, 1, ARC_SECONDS);
    double given = SimulatedWireArc.KNOB_VOLTS * burn.meanAmps();
    double lost = SimulatedWireArc.SOURCE_OHMS * burn.rmsAmps() * burn.rmsAmps();
    assertWithinPercent(given - lost, burn.meanWatts(), 0.5);
  }

  @Test
  void shouldKeepTruePowerApartFromTheProductOfMeans() {
    SimulatedBurn burn = steadyBurn(SHORT_ARC, 1, ARC_SECONDS);
    assertBetween(0.9, 0.99, burn.meanWatts() / (burn.meanAmps() * burn.meanVolts()));
  }

  @ParameterizedTest
  @EnumSource
  void shouldNotDependOnTheStep(SimulatedProcess process) {
    SimulatedBooth booth = SimulatedTrials.steadyRun(process, 1, 40);
    SimulatedBurn whole = SimulatedTrials.onlyBurn(SimulatedTrials.inSteps(booth, 20e-6));
    SimulatedBurn half = SimulatedTrials.onlyBurn(SimulatedTrials.inSteps(booth, 10e-6));
    assertWithinPercent(whole.meanAmps(), half.meanAmps(), 1);
    assertWithinPercent(whole.meanVolts(), half.meanVolts(), 1);
    assertWithinPercent(whole.meanWatts(), half.meanWatts(), 1);
  }
}
