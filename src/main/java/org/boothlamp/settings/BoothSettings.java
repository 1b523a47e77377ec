package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.judging.ChannelUncertainties;
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
 * @param clockHasBattery true if the machine's clock runs while the power is off
 * @param procedures where the procedures are
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
    boolean clockHasBattery,
    ProcedureSettings procedures,
    List<ShiftSettings> shifts) {

  public BoothSettings {
    shifts = List.copyOf(shifts);
  }
}
