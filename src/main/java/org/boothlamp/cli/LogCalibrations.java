package org.boothlamp.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.signal.ChannelScale;

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

  /**
   * The calibration that a monitor of these settings would measure by; null if there is none. A
   * recording brings its own scale along: then the latest counts, whatever it was made for.
   */
  static CalibrationRecord inUse(
      BoothSettings settings, CalibrationHistory history, Channel channel, ZonedDateTime moment) {
    if (settings.scale() == null) {
      return history.inUse(channel, moment.toInstant().toEpochMilli());
    }
    ChannelScale nominal = channel.of(settings.scale());
    return history.find(settings.sensor(channel, nominal, history, moment).number());
  }

  /** A clock's moment on the machine's local clock. */
  static ZonedDateTime moment(WallClock clock) {
    return Instant.ofEpochMilli(clock.epochMillis()).atZone(ZoneId.systemDefault());
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
