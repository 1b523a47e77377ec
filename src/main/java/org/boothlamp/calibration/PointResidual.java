package org.boothlamp.calibration;

/**
 * A used point beside the line. Immutable.
 *
 * @param point as taken
 * @param nominal its reading by the nominal scale
 * @param fitted reference the line gives there
 * @param residual reference minus fitted
 * @param studentized the residual, mean hysteresis taken out, over its standard deviation as
 *     estimated without this point; 0 if that has no meaning
 * @param outlier true if chance would hardly put any of the points that far off; it stays in the
 *     fit until a person throws it away
 */
public record PointResidual(
    CalibrationPoint point,
    double nominal,
    double fitted,
    double residual,
    double studentized,
    boolean outlier) {}
