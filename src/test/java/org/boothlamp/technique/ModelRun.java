package org.boothlamp.technique;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * A run as algebra: in every point the source's curve and the arc's, or the wire's burn-off, meet.
 * Far faster than a circuit in time, so that hundreds of runs with sources, wires, hands and noise
 * of their own can be read in a test. Every draw is made beforehand, so that the same run can be
 * made again with the machine set right or the hand held still.
 */
final class ModelRun {

  /** How long the runs are, points. */
  private static final int MOST_POINTS = 500;

  private static final double DT = RunProfile.POINT_SECONDS;
  private static final double AMPS_NOISE = 0.2;
  private static final double VOLTS_NOISE = 0.02;

  final ModelBooth booth;
  private final SplittableRandom random;
  private final int points;
  private final double[] hand;
  private final double[] ripple = new double[MOST_POINTS];
  private final double[] otherRipple = new double[MOST_POINTS];

  ModelRun(ModelBooth booth, SplittableRandom random) {
    this.booth = booth;
    this.random = random;
    points = 240 + random.nextInt(MOST_POINTS - 240);
    hand = hand();
    for (int k = 0; k < MOST_POINTS; k++) {
      ripple[k] = random.nextGaussian();
      otherRipple[k] = random.nextGaussian();
    }
  }

  /** Length of arc or stick-out, as a multiple of the right one: wandering, with spells. */
  private double[] hand() {
    double[] length = new double[points];
    double kept = Math.exp(-DT / 1.2);
    double wander = 0;
    double intended = 1;
    double[] aim = aim();
    for (int k = 0; k < points; k++) {
      wander = kept * wander + Math.sqrt(1 - kept * kept) * random.nextGaussian();
      intended += (aim[k] - intended) * Math.min(1, DT / 0.15);
      length[k] = Math.max(0.15, intended * (1 + booth.wander * wander));
    }
    return length;
  }

  private double[] aim() {
    double[] aim = new double[points];
    Arrays.fill(aim, 1);
    if (booth.mistake.hand) {
      int spells = 1 + random.nextInt(2);
      for (int spell = 0; spell < spells; spell++) {
        int length = 40 + random.nextInt(60);
        int from = 30 + spell * points / 2 + random.nextInt(Math.max(1, points / 2 - 140));
        Arrays.fill(aim, from, Math.min(points, from + length), booth.spellLength);
      }
    }
    return aim;
  }

  /** Amps and volts of every point. */
  double[][] play(boolean rightMachine, boolean rightHand) {
    double[] amps = new double[points];
    double[] volts = new double[points];
    for (int k = 0; k < points; k++) {
      double[] point =
          booth.meet(rightHand ? 1 : hand[k], !rightMachine, ripple[k], otherRipple[k]);
      amps[k] = (point[0] + AMPS_NOISE * otherRipple[k]) * booth.ampsGain;
      volts[k] = (point[1] + VOLTS_NOISE * ripple[k]) * booth.voltsGain;
    }
    return new double[][] {amps, volts};
  }

  RunProfile profile() {
    double[][] played = play(false, false);
    return new RunProfile(played[0], played[0], played[0], played[1], played[1], played[1]);
  }

  List<Spell> spells() {
    double[][] played = play(false, false);
    List<Spell> spells = new ArrayList<>();
    spells(played[0], booth.ampsWindow, spells);
    spells(played[1], booth.voltsWindow, spells);
    return spells;
  }

  /** Trailing means of 1 s, every 0.1 s, outside for at least 0.3 s. */
  private static void spells(double[] values, Window window, List<Spell> spells) {
    int outside = 0;
    double start = 0;
    for (int end = 20; end <= values.length; end += 2) {
      int now = side(mean(values, end), window);
      if (now != outside) {
        addIfLong(spells, window.quantity(), outside, start, end * DT);
        outside = now;
        start = end * DT;
      }
    }
    addIfLong(spells, window.quantity(), outside, start, values.length * DT);
  }

  private static void addIfLong(
      List<Spell> spells, Quantity quantity, int outside, double start, double end) {
    if (outside != 0 && end - start > 0.29) {
      spells.add(new Spell(quantity, outside > 0 ? Side.HIGH : Side.LOW, start, end));
    }
  }

  private static int side(double mean, Window window) {
    return mean > window.high() ? 1 : mean < window.low() ? -1 : 0;
  }

  private static double mean(double[] values, int end) {
    double sum = 0;
    for (int k = end - 20; k < end; k++) {
      sum += values[k];
    }
    return sum / 20;
  }

  /**
   * The truth about a spell: a hand if the average would have been out with the machine set right
   * too, the machine if it would have been out with a still hand too; both if both, or neither.
   */
  Truth truth(Spell spell) {
    boolean byHand = isOut(spell, play(true, false));
    boolean byMachine = isOut(spell, play(false, true));
    double length = 0;
    int from = (int) Math.max(0, spell.startSeconds() / DT - 10);
    int until = (int) (spell.endSeconds() / DT) - 10;
    for (int k = from; k < until; k++) {
      length += hand[k] / (until - from);
    }
    return new Truth(
        byHand || !byMachine, byMachine || !byHand && booth.mistake.machine, length > 1);
  }

  private boolean isOut(Spell spell, double[][] played) {
    Window window = spell.quantity() == Quantity.AMPS ? booth.ampsWindow : booth.voltsWindow;
    double[] values = spell.quantity() == Quantity.AMPS ? played[0] : played[1];
    int out = 0;
    int all = 0;
    int from = (int) Math.round(spell.startSeconds() / DT);
    for (int end = from; end * DT <= spell.endSeconds(); end += 2) {
      int wanted = spell.side() == Side.HIGH ? 1 : -1;
      out += side(mean(values, Math.min(end, values.length)), window) == wanted ? 1 : 0;
      all++;
    }
    return 2 * out > all;
  }

  /**
   * What may be named. Both may be right.
   *
   * @param hand a hand
   * @param machine the machine
   * @param longer the hand was farther than right
   */
  record Truth(boolean hand, boolean machine, boolean longer) {

    boolean allows(Cause cause) {
      return switch (cause) {
        case ARC_LONGER, STICK_OUT_LONGER -> hand && longer;
        case ARC_SHORTER, STICK_OUT_SHORTER -> hand && !longer;
        case MACHINE_SETTING -> machine;
        default -> false;
      };
    }

    /** True if a cause takes the hand for the machine, or the machine for the hand. */
    boolean isTakenForTheOther(Cause cause) {
      return cause.isHand() ? !hand : cause == Cause.MACHINE_SETTING && !machine;
    }

    String word() {
      return hand && machine
          ? "hand and machine"
          : machine ? "machine" : longer ? "longer" : "shorter";
    }
  }
}
