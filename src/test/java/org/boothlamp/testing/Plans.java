package org.boothlamp.testing;

import java.util.Arrays;
import java.util.List;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/** Procedures of one pass, made up for tests. */
public final class Plans {

  /** Sensors that are never wrong, so that the caution band is 10 % of the window. */
  public static final ChannelUncertainties EXACT = uncertain(0, 0);

  private Plans() {}

  /** Channels uncertain by so many amps and volts at every reading. */
  public static ChannelUncertainties uncertain(double amps, double volts) {
    return new ChannelUncertainties(
        new ExpandedUncertainty(amps, 0), new ExpandedUncertainty(volts, 0), true);
  }

  /** A pass "fill" with these windows. */
  public static Pass pass(Window... windows) {
    return new Pass("fill", Arrays.asList(windows), Double.NaN, Double.NaN);
  }

  /** A plan with exact sensors. */
  public static JudgingPlan of(Polarity current, Window... windows) {
    return of(current, Double.NaN, windows);
  }

  /** A plan with exact sensors and an arc-on current of its own. */
  public static JudgingPlan of(Polarity current, double arcOnAmps, Window... windows) {
    Pass pass = pass(windows);
    Procedure procedure =
        new Procedure(
            "S-1",
            "1",
            Process.MANUAL_METAL_ARC,
            current,
            Characteristic.CONSTANT_CURRENT,
            arcOnAmps,
            List.of(pass));
    return new JudgingPlan(procedure, pass, EXACT);
  }

  /** Amps between two limits. */
  public static Window amps(double low, double high) {
    return new Window(Quantity.AMPS, low, high);
  }

  /** Volts between two limits. */
  public static Window volts(double low, double high) {
    return new Window(Quantity.VOLTS, low, high);
  }
}
