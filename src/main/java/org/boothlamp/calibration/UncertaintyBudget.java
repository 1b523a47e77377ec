package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.List;

/**
 * The uncertainty of one reading, influence by influence, after the GUM (JCGM 100:2008). Immutable.
 *
 * @param reading calibrated reading it holds for, in amps or volts
 * @param lines influences
 * @param combined combined standard uncertainty
 * @param effectiveDegreesOfFreedom by Welch and Satterthwaite, not rounded; may be infinite
 * @param coverageFactor k for 95.45 %
 * @param expanded U = k times combined
 */
public record UncertaintyBudget(
    double reading,
    List<UncertaintyLine> lines,
    double combined,
    double effectiveDegreesOfFreedom,
    double coverageFactor,
    double expanded) {

  public UncertaintyBudget {
    lines = List.copyOf(lines);
  }

  /**
   * @param scatter lines that all rest on the scatter about the fit: they share its degrees of
   *     freedom and so count as one in Welch and Satterthwaite's formula
   * @param limits lines that depend on nothing else
   */
  static UncertaintyBudget of(
      double reading, List<UncertaintyLine> scatter, List<UncertaintyLine> limits) {
    double[] uncertainties = new double[limits.size() + 1];
    double[] freedoms = new double[limits.size() + 1];
    uncertainties[0] = rootSumOfSquares(scatter);
    freedoms[0] = scatter.get(0).degreesOfFreedom();
    for (int i = 0; i < limits.size(); i++) {
      uncertainties[i + 1] = limits.get(i).standardUncertainty();
      freedoms[i + 1] = limits.get(i).degreesOfFreedom();
    }
    List<UncertaintyLine> all = new ArrayList<>(scatter);
    all.addAll(limits);
    double combined = rootSumOfSquares(all);
    double freedom = Coverage.effectiveFreedom(uncertainties, freedoms);
    double factor = Coverage.factor(freedom, Coverage.PROBABILITY);
    return new UncertaintyBudget(reading, all, combined, freedom, factor, factor * combined);
  }

  /** Root of the sum of squares of the lines with these names. */
  double combinedOf(List<String> names) {
    return rootSumOfSquares(lines.stream().filter(line -> names.contains(line.name())).toList());
  }

  private static double rootSumOfSquares(List<UncertaintyLine> lines) {
    double sum = 0;
    for (UncertaintyLine line : lines) {
      sum += line.standardUncertainty() * line.standardUncertainty();
    }
    return Math.sqrt(sum);
  }
}
