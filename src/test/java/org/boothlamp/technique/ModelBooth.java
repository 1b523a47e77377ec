package org.boothlamp.technique;

import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/** A drawn booth: process, source, rod or wire, procedure, sensors' errors, and what goes wrong. */
final class ModelBooth {

  enum Mistake {
    NONE(false, false),
    HAND(true, false),
    MACHINE(false, true),
    BOTH(true, true);

    final boolean hand;
    final boolean machine;

    Mistake(boolean hand, boolean machine) {
      this.hand = hand;
      this.machine = machine;
    }
  }

  private static final List<Process> PROCESSES =
      List.of(Process.MANUAL_METAL_ARC, Process.TIG, Process.MAG);
  private static final double[] WIRES_MM = {0.8, 0.9, 1.0, 1.2, 1.6};

  final Process process;
  final Mistake mistake;
  final double wander;
  final double spellLength;
  final double ampsGain;
  final double voltsGain;
  final Window ampsWindow;
  final Window voltsWindow;

  private final boolean wire;
  private final double rightAmps;
  private final double rightVolts;
  private final double setting;
  private final double openVolts;
  private final double exponent;
  private final double rightLength;
  private final double gradient;
  private final double rippleAmps;
  private final double rippleVolts;
  private final double sourceOhms;
  private final double settingVolts;
  private final double wireMm;
  private final BurnOff burnOff;

  ModelBooth(SplittableRandom random) {
    process = PROCESSES.get(random.nextInt(3));
    wire = process == Process.MAG;
    mistake = mistake(random.nextDouble());
    wander = between(random, 0.03, 0.10);
    boolean longer = random.nextDouble() < 0.7;
    spellLength = longer ? between(random, 1.6, 2.2) : between(random, 0.3, 0.5);
    ampsGain = 1 + 0.005 * random.nextGaussian();
    voltsGain = 1 + 0.005 * random.nextGaussian();
    wireMm = wire ? WIRES_MM[random.nextInt(WIRES_MM.length)] : Double.NaN;
    boolean tig = process == Process.TIG;
    rightAmps = wire ? 110 * wireMm * wireMm + 55 : between(random, 70, 180);
    rightLength =
        wire ? between(random, 8, 15) : tig ? between(random, 2, 4) : between(random, 2, 4);
    gradient = tig ? between(random, 0.7, 1.2) : between(random, 1.5, 2.6);
    double fall = tig ? between(random, 7, 9) : between(random, 13, 18);
    rightVolts = wire ? between(random, 16, 27) : fall + gradient * rightLength;
    openVolts = between(random, 50, 90);
    exponent = tig ? between(random, 2, 12) : between(random, 1, 2.5);
    rippleVolts =
        tig
            ? between(random, 0.02, 0.15)
            : wire ? between(random, 0.1, 0.3) : between(random, 0.2, 0.8);
    rippleAmps = wire ? between(random, 0.01, 0.035) * rightAmps : 0;
    sourceOhms = between(random, 0.01, 0.05);
    boolean hot = random.nextBoolean();
    double error = between(random, 0.15, 0.35);
    setting = 1 + (hot ? error : -error);
    settingVolts = 1 + (hot ? 1 : -1) * between(random, 0.10, 0.2);
    burnOff = wire ? BurnOff.ofSolidSteel(wireMm) : null;
    ampsWindow = window(random, Quantity.AMPS, rightAmps, between(random, 0.07, 0.13));
    voltsWindow = window(random, Quantity.VOLTS, rightVolts, between(random, 0.07, 0.13));
  }

  private static Mistake mistake(double draw) {
    return draw < 0.15
        ? Mistake.NONE
        : draw < 0.6 ? Mistake.HAND : draw < 0.93 ? Mistake.MACHINE : Mistake.BOTH;
  }

  private static double between(SplittableRandom random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** The right setting lies somewhere about the middle of its window. */
  private static Window window(
      SplittableRandom random, Quantity quantity, double right, double share) {
    double middle = right * (1 + 0.2 * share * between(random, -1, 1));
    return new Window(quantity, middle * (1 - share), middle * (1 + share));
  }

  Procedure procedure() {
    Pass pass =
        new Pass(
            "run", List.of(ampsWindow, voltsWindow), wireMm, wire ? feed() : Double.NaN, false);
    return new Procedure(
        "M-1",
        "1",
        process,
        process == Process.TIG ? Polarity.DC_MINUS : Polarity.DC_PLUS,
        wire ? Characteristic.CONSTANT_VOLTAGE : Characteristic.CONSTANT_CURRENT,
        Double.NaN,
        List.of(pass));
  }

  private double feed() {
    return burnOff.feedMmPerS(rightAmps, rightAmps, rightLength);
  }

  /** Amps and volts where everything meets. */
  double[] meet(double length, boolean asSet, double ripple, double otherRipple) {
    boolean wrong = asSet && mistake.machine;
    return wire
        ? meetWire(length, wrong, ripple, otherRipple)
        : meetArc(length, wrong ? setting : 1, ripple);
  }

  private double[] meetArc(double length, double set, double ripple) {
    double atRight = 1 - Math.pow(rightVolts / openVolts, exponent);
    double shortAmps = set * rightAmps / atRight;
    double extra = gradient * rightLength * (length - 1) + rippleVolts * ripple;
    double volts =
        new BrentSolver(1e-9)
            .solve(
                200,
                v -> rightVolts + extra + 0.015 * (curve(v, shortAmps) - rightAmps) - v,
                1,
                openVolts - 0.01);
    return new double[] {curve(volts, shortAmps), volts};
  }

  private double curve(double volts, double shortAmps) {
    return shortAmps * (1 - Math.pow(volts / openVolts, exponent));
  }

  private double[] meetWire(double length, boolean wrong, double ripple, double otherRipple) {
    double amps = burnOff.amps(wrong ? setting * feed() : feed(), length * rightLength);
    double open = (wrong ? settingVolts : 1) * rightVolts + sourceOhms * rightAmps;
    return new double[] {
      amps + rippleAmps * ripple, open - sourceOhms * amps + rippleVolts * otherRipple
    };
  }
}
