package org.boothlamp.calibration;

import java.util.Arrays;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * A weighted least-squares fit of any linear model, by QR decomposition of rows scaled with the
 * root of their weight. Columns should be centred and of like size, or digits are lost. Immutable.
 */
final class LeastSquares {

  private final double[][] rows;
  private final double[] weights;
  private final double[] coefficients;
  private final double[] residuals;
  private final double[][] inverseNormal;
  private final double sumOfSquares;

  /**
   * @param rows one row of the model a point, each as long as there are coefficients
   * @param values what the model should give
   * @param weights above 0
   * @throws org.apache.commons.math3.exception.MathIllegalArgumentException if there are not more
   *     points than coefficients, or the columns depend on each other
   */
  LeastSquares(double[][] rows, double[] values, double[] weights) {
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
    regression.setNoIntercept(true);
    regression.newSampleData(scaled(values, weights), scaled(rows, weights));
    this.rows = rows;
    this.weights = weights;
    this.coefficients = regression.estimateRegressionParameters();
    this.inverseNormal = regression.estimateRegressionParametersVariance();
    this.residuals = new double[values.length];
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      residuals[i] = values[i] - dot(rows[i], coefficients);
      sum += weights[i] * residuals[i] * residuals[i];
    }
    this.sumOfSquares = sum;
  }

  /** With all weights 1. */
  static LeastSquares ordinary(double[][] rows, double[] values) {
    double[] ones = new double[values.length];
    Arrays.fill(ones, 1);
    return new LeastSquares(rows, values, ones);
  }

  double coefficient(int index) {
    return coefficients[index];
  }

  /** Of two coefficients, from the scatter about the fit. */
  double covariance(int one, int other) {
    return variance() * inverseNormal[one][other];
  }

  /** Weighted sum of the squared residuals. */
  double sumOfSquares() {
    return sumOfSquares;
  }

  int degreesOfFreedom() {
    return rows.length - coefficients.length;
  }

  /** Of a point of weight 1 about the fit. */
  double variance() {
    return sumOfSquares / degreesOfFreedom();
  }

  /** Value minus fit, not weighted. */
  double residual(int point) {
    return residuals[point];
  }

  /** How much of its own fitted value a point makes up, 0 to 1. */
  double leverage(int point) {
    double sum = 0;
    for (int k = 0; k < coefficients.length; k++) {
      sum += rows[point][k] * dot(inverseNormal[k], rows[point]);
    }
    return weights[point] * sum;
  }

  private static double[] scaled(double[] values, double[] weights) {
    double[] out = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      out[i] = Math.sqrt(weights[i]) * values[i];
    }
    return out;
  }

  private static double[][] scaled(double[][] rows, double[] weights) {
    double[][] out = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      out[i] = new double[rows[i].length];
      for (int k = 0; k < rows[i].length; k++) {
        out[i][k] = Math.sqrt(weights[i]) * rows[i][k];
      }
    }
    return out;
  }

  private static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int k = 0; k < one.length; k++) {
      sum += one[k] * other[k];
    }
    return sum;
  }
}
