package org.boothlamp.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.settings.BoothSettings;

/** What commands read of a booth's calibrations. */
final class LogCalibrations {

  private LogCalibrations() {}

  /**
   * All calibrations of a log; none if there is no log yet.
   *
   * @throws org.boothlamp.boothlog.BoothLogException if the log cannot be read
   */
  static CalibrationHistory read(Path log) {
    if (!Files.exists(log)) {
      return CalibrationHistory.NONE;
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.calibrations();
    }
  }

  /** U that a monitor of these settings would judge by now. */
  static ChannelUncertainties uncertainties(BoothSettings settings) {
    if (settings.scale() == null) {
      return settings.accuracy();
    }
    CalibrationHistory history = read(SettingsOption.logOf(settings));
    return settings.sensors(settings.scale(), history, ZonedDateTime.now()).uncertainties();
  }
}
