package org.boothlamp.calibration;

import java.util.function.IntFunction;
import org.apache.commons.math3.special.Beta;

/**
 * Holds what a straight line leaves against scatter that no curve could explain. Points of one
 * level that differ little in their reading count as repeats, after the line and the mean loop are
 * taken off.
 */
final class CurvatureTest {

  /** With fewer degrees of freedom repeats know too little of the scatter. */
  private static final int SMALLEST_PURE_FREEDOM = 3;

  private final PointTable points;
  private final LeastSquares line;
  private final IntFunction<LeastSquares> fitOfDegree;

  CurvatureTest(PointTable points, LeastSquares line, IntFunction<LeastSquares> fitOfDegree) {
    this.points = points;
    this.line = line;
    this.fitOfDegree = fitOfDegree;
  }

  LackOfFit test() {
    int misfitFreedom = points.levels.size() - 2;
    int pureFreedom = line.degreesOfFreedom() - misfitFreedom;
    if (misfitFreedom >= 1 && pureFreedom >= SMALLEST_PURE_FREEDOM) {
      return againstRepeats(misfitFreedom, pureFreedom);
    }
    boolean curveCanBeFitted = points.levels.size() >= 3 && line.degreesOfFreedom() >= 2;
    return curveCanBeFitted ? againstQuadratic() : LackOfFit.NOT_TESTED;
  }

  private LackOfFit againstRepeats(int misfitFreedom, int pureFreedom) {
    double pure = points.levels.stream().mapToDouble(this::withinLevel).sum();
    double misfit = Math.max(0, line.sumOfSquares() - pure);
    return ratio(LackOfFit.Method.PURE_ERROR, misfit, misfitFreedom, pure, pureFreedom);
  }

  private LackOfFit againstQuadratic() {
    LeastSquares quadratic = fitOfDegree.apply(2);
    double explained = Math.max(0, line.sumOfSquares() - quadratic.sumOfSquares());
    return ratio(
        LackOfFit.Method.QUADRATIC_TERM,
        explained,
        1,
        quadratic.sumOfSquares(),
        quadratic.degreesOfFreedom());
  }

  private double withinLevel(PointTable.Level level) {
    double weightSum = 0;
    double sum = 0;
    for (int i : level.all()) {
      weightSum += points.weights[i];
      sum += points.weights[i] * line.residual(i);
    }
    double squares = 0;
    for (int i : level.all()) {
      double distance = line.residual(i) - sum / weightSum;
      squares += points.weights[i] * distance * distance;
    }
    return squares;
  }

  /** Equal displays in a row would make the scatter 0: it counts at least as a display's step. */
  private LackOfFit ratio(
      LackOfFit.Method method, double above, int aboveFreedom, double below, int belowFreedom) {
    double scatter = Math.max(below / belowFreedom, points.resolutionVariance);
    if (!(scatter > 0)) {
      return LackOfFit.NOT_TESTED;
    }
    double f = above / aboveFreedom / scatter;
    return new LackOfFit(
        method, f, aboveFreedom, belowFreedom, upperTail(f, aboveFreedom, belowFreedom));
  }

  /** Upper tail of Fisher's F, without the cancellation of one minus the lower tail. */
  static double upperTail(double f, double aboveFreedom, double belowFreedom) {
    double x = belowFreedom / (belowFreedom + aboveFreedom * f);
    return Beta.regularizedBeta(x, belowFreedom / 2, aboveFreedom / 2);
  }
}
