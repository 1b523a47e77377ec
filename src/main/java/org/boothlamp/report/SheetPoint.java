package org.boothlamp.report;

import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.PointResidual;

/**
 * A point of a calibration beside everything that follows from it, in amps or volts; NaN where
 * there is nothing. Immutable.
 *
 * @param index place in the record, from 1
 * @param point as taken
 * @param nominal its reading by the nominal scale
 * @param fit the point beside the line; null if it was thrown away or there is no line
 * @param fitted reference the line gives there
 * @param residual reference minus fitted
 * @param asFoundError what the scale in use before showed, less the reference
 * @param asLeftError the same of the fitted scale
 */
record SheetPoint(
    int index,
    CalibrationPoint point,
    double nominal,
    PointResidual fit,
    double fitted,
    double residual,
    double asFoundError,
    double asLeftError) {

  boolean isOutlier() {
    return fit != null && fit.outlier();
  }
}
