package org.boothlamp.settings;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import org.boothlamp.boothlog.RetentionRule;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/**
 * Everything booth.toml says, defaults filled in, paths resolved against the file. Immutable.
 *
 * @param file the settings file, as it was asked for
 * @param boothId 1 to 16 letters, digits and hyphens
 * @param source where the pairs come from
 * @param scale counts to amps and volts; null with a recording, which brings its own
 * @param accuracy stated uncertainties, for as long as there is no calibration
 * @param calibration what a calibration must come up to
 * @param lamp where the signal is shown
 * @param arc when an arc burns
 * @param judging times of averaging and judging
 * @param logFolder folder of the booth log; not checked here
 * @param retention how long rows are kept
 * @param recordings raw recordings of the last segments
 * @param clockHasBattery true if the machine's clock runs while the power is off
 * @param procedures where the procedures are
 * @param steadyRuleFile what the school calls steady enough; null if it says nothing
 * @param sync where rows are sent; null if they stay here
 * @param badge the reader that trainees sign in with; null if there is none
 * @param screen the language and the units of screens
 * @param page the local web page; null for none
 * @param shifts in file order, not overlapping; empty if reports go by whole days
 */
public record BoothSettings(
    Path file,
    String boothId,
    SourceSettings source,
    PairScale scale,
    ChannelUncertainties accuracy,
    CalibrationSettings calibration,
    LampSettings lamp,
    ArcSettings arc,
    JudgingSettings judging,
    Path logFolder,
    RetentionRule retention,
    RecordingsSettings recordings,
    boolean clockHasBattery,
    ProcedureSettings procedures,
    Path steadyRuleFile,
    SyncSettings sync,
    BadgeSettings badge,
    ScreenSettings screen,
    PageSettings page,
    List<ShiftSettings> shifts) {

  public BoothSettings {
    shifts = List.copyOf(shifts);
  }

  /**
   * What the sensors measure by at a moment.
   *
   * @param nominal counts to amps and volts by the data sheets: {@link #scale}, or a recording's
   * @param history all calibrations of the booth
   * @param moment on the booth's local clock
   */
  public SensorsInUse sensors(PairScale nominal, CalibrationHistory history, ZonedDateTime moment) {
    return new SensorsInUse(
        sensor(Channel.CURRENT, nominal.current(), history, moment),
        sensor(Channel.VOLTAGE, nominal.voltage(), history, moment));
  }

  /** The same of one sensor. */
  public SensorInUse sensor(
      Channel channel, ChannelScale nominal, CalibrationHistory history, ZonedDateTime moment) {
    ZonedDateTime known =
        Instant.ofEpochMilli(history.notBefore(moment.toInstant().toEpochMilli()))
            .atZone(moment.getZone());
    ExpandedUncertainty stated = channel == Channel.CURRENT ? accuracy.amps() : accuracy.volts();
    return SensorInUse.of(
        history,
        channel,
        new SensorInUse.Fallback(nominal, stated, calibration.overdueFactor()),
        known.toInstant().toEpochMilli(),
        known.toLocalDate());
  }
}
