package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.acquisition.SimulatedBooth;
import org.boothlamp.acquisition.SimulatedProcess;
import org.boothlamp.acquisition.SimulatedRun;
import org.boothlamp.acquisition.SimulatedTrainee;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;

/**
 * The shift that the demo plays: three trainees take turns in one booth, with stick and short-arc.
 * All of it is invented; what happens in each run comes from the simulator and its seed. Immutable.
 *
 * @param booth script of the simulated booth
 * @param scale scale of its counts
 * @param assignments who welds, against what, for each run of the script
 */
public record DemoScenario(SimulatedBooth booth, PairScale scale, List<Assignment> assignments) {

  /** Booth id in the demo's log. */
  public static final String BOOTH_ID = "B-03";

  private static final long SEED = 20;

  /** A clamp of 600 A and a divider of 100 V either way on 12 bits. */
  private static final PairScale SCALE =
      new PairScale(new ChannelScale(1200.0 / 4096, 0), new ChannelScale(200.0 / 4096, 0));

  private static final ChannelUncertainties STATED =
      new ChannelUncertainties(
          new ExpandedUncertainty(2.5, 0), new ExpandedUncertainty(0.4, 0), false);

  public DemoScenario {
    assignments = List.copyOf(assignments);
  }

  /** The one shift: about a quarter of an hour of work, three trainees, two procedures. */
  public static DemoScenario shift() {
    JudgingPlan stick =
        plan(
            procedure("S-3F-18", Process.MANUAL_METAL_ARC, Characteristic.CONSTANT_CURRENT),
            pass("fill", 95, 125, 20, 26));
    JudgingPlan shortArc =
        plan(
            procedure("M-2F-09", Process.MAG, Characteristic.CONSTANT_VOLTAGE),
            pass("single", 132, 152, 15, 18));
    Turns turns = new Turns();
    turns.add("T-04", stick, SimulatedProcess.STICK, SimulatedTrainee.beginner(), 6, 30);
    turns.add("T-11", shortArc, SimulatedProcess.SHORT_ARC, SimulatedTrainee.ofSkill(0.5), 6, 25);
    turns.add("T-17", stick, SimulatedProcess.STICK, SimulatedTrainee.good(), 4, 35);
    turns.add("T-17", shortArc, SimulatedProcess.SHORT_ARC, SimulatedTrainee.ofSkill(0.8), 3, 25);
    turns.add("T-04", stick, SimulatedProcess.STICK, SimulatedTrainee.ofSkill(0.4), 3, 30);
    return new DemoScenario(SimulatedBooth.of(turns.runs, SEED), SCALE, turns.assignments);
  }

  private static Procedure procedure(String id, Process process, Characteristic source) {
    return new Procedure(id, "1", process, Polarity.DC_PLUS, source, Double.NaN, List.of());
  }

  private static Pass pass(
      String name, double lowAmps, double highAmps, double lowVolts, double highVolts) {
    List<Window> windows =
        List.of(
            new Window(Quantity.AMPS, lowAmps, highAmps),
            new Window(Quantity.VOLTS, lowVolts, highVolts));
    return new Pass(name, windows, Double.NaN, Double.NaN);
  }

  private static JudgingPlan plan(Procedure procedure, Pass pass) {
    return new JudgingPlan(procedure, pass, STATED);
  }

  /** Script and assignments side by side, while they are put together. */
  private static final class Turns {

    private static final double FIRST_PAUSE_SECONDS = 20;
    private static final double PAUSE_SECONDS = 8;

    private final List<SimulatedRun> runs = new ArrayList<>();
    private final List<Assignment> assignments = new ArrayList<>();

    void add(
        String trainee,
        JudgingPlan plan,
        SimulatedProcess process,
        SimulatedTrainee hand,
        int count,
        double arcSeconds) {
      for (int i = 0; i < count; i++) {
        double pause = i == 0 ? FIRST_PAUSE_SECONDS : PAUSE_SECONDS;
        runs.add(SimulatedRun.of(pause, process, hand, arcSeconds));
        assignments.add(new Assignment(trainee, plan));
      }
    }
  }
}
