package org.boothlamp.boothlog;

import java.nio.file.Path;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.testing.CalibrationBookContract;
import org.junit.jupiter.api.io.TempDir;

/** The book in the booth log keeps the contract of every book. */
class BoothCalibrationsContractTest extends CalibrationBookContract {

  @TempDir Path folder;

  @Override
  protected CalibrationBook open() {
    return BoothCalibrations.open(folder.resolve(BoothLog.FILE_NAME));
  }
}
