package org.boothlamp.technique;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/** Runs that are written down point by point, with a little noise. */
final class SyntheticRun {

  private static final ChannelUncertainties UNCERTAINTIES =
      new ChannelUncertainties(
          new ExpandedUncertainty(0.5, 0.01), new ExpandedUncertainty(0.1, 0.01), true);

  private SyntheticRun() {}

  static RunProfile profile(
      double seconds, DoubleUnaryOperator amps, DoubleUnaryOperator volts, double noise) {
    SplittableRandom random = new SplittableRandom(7);
    int points = (int) Math.round(seconds / RunProfile.POINT_SECONDS);
    double[] a = new double[points];
    double[] v = new double[points];
    for (int k = 0; k < points; k++) {
      double t = (k + 0.5) * RunProfile.POINT_SECONDS;
      a[k] = amps.applyAsDouble(t) * (1 + noise * random.nextGaussian());
      v[k] = volts.applyAsDouble(t) * (1 + noise * random.nextGaussian());
    }
    return new RunProfile(a, a, a, v, v, v);
  }

  static Procedure procedure(Process process, Characteristic source, boolean whip) {
    return procedure(
        process,
        source,
        new Window(Quantity.AMPS, 105, 140),
        new Window(Quantity.VOLTS, 17, 23),
        whip);
  }

  static Procedure procedure(
      Process process, Characteristic source, Window amps, Window volts, boolean whip) {
    Pass pass = new Pass("run", List.of(amps, volts), Double.NaN, Double.NaN, whip);
    return new Procedure("S-1", "1", process, Polarity.DC_PLUS, source, Double.NaN, List.of(pass));
  }

  static TechniqueReader reader(Procedure procedure, SchoolScales scales) {
    return new TechniqueReader(procedure, procedure.passes().get(0), UNCERTAINTIES, scales);
  }
}
