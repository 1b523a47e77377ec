package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.signal.ChannelScale;

/** Calibration runs to test with. */
final class Runs {

  static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

  /** Points of exact nominal value: a power of two scales without rounding, and is a tiny step. */
  private static final ChannelScale FINE = new ChannelScale(Math.scalb(1.0, -40), 0);

  /** 12 bits for 400 A either way, zero in the middle. */
  static final ChannelScale CLAMP = new ChannelScale(0.2, 2048);

  private Runs() {}

  static ReferenceMeter meter(double percentOfReading, double counts, double resolution) {
    return new ReferenceMeter(
        "bench meter", "M-1", "C-77", TODAY.minusMonths(3), percentOfReading, counts, resolution);
  }

  static CalibrationPoint point(double level, Direction direction, double counts, double value) {
    return new CalibrationPoint(level, direction, counts, 2, 1000, 0, value, null);
  }

  /** Columns of a published data set, all rising, each its own level unless equal. */
  static CalibrationResult fit(double[] readings, double[] references) {
    double[] none = new double[readings.length];
    return fit(readings, references, none, Weighting.ORDINARY);
  }

  static CalibrationResult fit(
      double[] readings, double[] references, double[] uncertainties, Weighting weighting) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < readings.length; i++) {
      points.add(
          new CalibrationPoint(
              readings[i],
              Direction.RISING,
              FINE.toCount(readings[i]),
              uncertainties[i] / FINE.unitsPerCount(),
              1,
              0,
              references[i],
              null));
    }
    CalibrationRun run =
        new CalibrationRun(Channel.VOLTAGE, FINE, 1000, TODAY, "T7", meter(0, 0, 0), points);
    return LineFit.fit(PointTable.of(run, weighting));
  }

  /**
   * A current clamp of 400 A, levels in equal steps from 0, up and down again, noise as a fixed
   * small pattern.
   *
   * @param counts counts at a true current
   * @param loopAmps how much more the sensor shows when falling
   */
  static CalibrationRun clamp(int levels, double top, DoubleUnaryOperator counts, double loopAmps) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < levels; i++) {
      points.add(clampPoint(top * i / (levels - 1), Direction.RISING, counts, -loopAmps / 2, i));
    }
    for (int i = levels - 1; i >= 0; i--) {
      points.add(
          clampPoint(top * i / (levels - 1), Direction.FALLING, counts, loopAmps / 2, i + 3));
    }
    return new CalibrationRun(Channel.CURRENT, CLAMP, 400, TODAY, "T7", meter(0.1, 3, 0.1), points);
  }

  private static CalibrationPoint clampPoint(
      double amps, Direction direction, DoubleUnaryOperator counts, double loop, int index) {
    double noise = new double[] {0.11, -0.13, 0.05, -0.02}[index % 4];
    return point(amps, direction, counts.applyAsDouble(amps) + (loop + noise) / 0.2, amps);
  }

  /** A sound clamp: 4 % too low a scale, 3 A too high a zero. */
  static CalibrationRun soundClamp() {
    return clamp(6, 400, Runs::lowByFourPercent, 0.2);
  }

  static double lowByFourPercent(double amps) {
    return CLAMP.toCount(amps / 1.04 + 3);
  }

  static CalibrationOutcome evaluate(CalibrationRun run) {
    return Calibration.evaluate(run, run.nominal(), CalibrationRules.STANDARD);
  }
}
