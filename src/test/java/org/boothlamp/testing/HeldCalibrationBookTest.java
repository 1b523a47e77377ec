package org.boothlamp.testing;

import org.boothlamp.calibration.CalibrationBook;

/** The book in memory keeps the contract too. */
class HeldCalibrationBookTest extends CalibrationBookContract {

  private final HeldCalibrationBook held = new HeldCalibrationBook();

  @Override
  protected CalibrationBook open() {
    return held;
  }
}
