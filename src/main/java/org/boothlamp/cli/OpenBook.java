package org.boothlamp.cli;

import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.settings.BoothSettings;

/**
 * The book of a booth's calibrations, and the monitor kept out while it lies open: sensor and meter
 * are read here, and no two may read the same line. Confined to one thread.
 */
final class OpenBook implements AutoCloseable {

  private final BoothLog lock;
  private final CalibrationBook book;

  private OpenBook(BoothLog lock, CalibrationBook book) {
    this.lock = lock;
    this.book = book;
  }

  /**
   * Opens it.
   *
   * @throws org.boothlamp.boothlog.BoothLogException if the monitor runs
   */
  static OpenBook open(Parts parts, BoothSettings settings) {
    BoothLog lock = BoothLog.open(SettingsOption.logOf(settings));
    try {
      return new OpenBook(lock, parts.calibrationBook(settings));
    } catch (RuntimeException failure) {
      lock.close();
      throw failure;
    }
  }

  CalibrationBook book() {
    return book;
  }

  @Override
  public void close() {
    try {
      book.close();
    } finally {
      lock.close();
    }
  }
}
