package org.boothlamp.calibration;

import java.util.Arrays;
import java.util.List;

/**
 * The one-point checks of a channel over time. Each error is held against its own limit; whether
 * the run as a whole wanders is told from the checks of the calibration in use at the last one, for
 * a new calibration begins a new run. Errors count there as shares of their limits, so that checks
 * at different readings can stand beside each other. Immutable.
 */
public final class ControlChart {

  /** As many checks are looked at. */
  public static final int LENGTH = 24;

  /** Fewer do not tell a standard deviation; common practice, no source. */
  public static final int FEWEST_FOR_LIMITS = 8;

  private final List<CalibrationCheck> checks;
  private final List<CalibrationCheck> run;
  private final List<Double> shares;
  private final ControlLimits limits;
  private final ControlDrift drift;

  private ControlChart(List<CalibrationCheck> checks) {
    this.checks = checks;
    this.run = runOf(checks);
    this.shares = run.stream().map(ControlChart::share).toList();
    this.limits = shares.size() < FEWEST_FOR_LIMITS ? null : ControlLimits.of(shares);
    this.drift = ControlDrift.of(run, shares);
  }

  /**
   * The chart of the last of some checks.
   *
   * @param checks of one channel in order of time; may be empty
   */
  public static ControlChart of(List<CalibrationCheck> checks) {
    return new ControlChart(
        List.copyOf(checks.subList(Math.max(0, checks.size() - LENGTH), checks.size())));
  }

  private static List<CalibrationCheck> runOf(List<CalibrationCheck> checks) {
    if (checks.isEmpty()) {
      return checks;
    }
    long number = checks.get(checks.size() - 1).calibrationNumber();
    return checks.stream()
        .filter(check -> check.calibrationNumber() == number && Double.isFinite(share(check)))
        .toList();
  }

  /** A check's error over its limit: beyond 1 either way it has failed. */
  public static double share(CalibrationCheck check) {
    return check.error() / check.limit();
  }

  /** The last checks, at most {@link #LENGTH}, in order of time. */
  public List<CalibrationCheck> checks() {
    return checks;
  }

  /** Those of the calibration in use at the last. */
  public List<CalibrationCheck> run() {
    return run;
  }

  /** What the run scatters about; null if it is too short to tell, or does not scatter. */
  public ControlLimits limits() {
    return limits;
  }

  /** Where the run goes; null if it is too short to tell. */
  public ControlDrift drift() {
    return drift;
  }

  /** What the end of the run breaks; nothing as long as there are no limits. */
  public List<ControlRule> brokenRules() {
    if (limits == null) {
      return List.of();
    }
    List<Double> deviations = shares.stream().map(limits::deviation).toList();
    return Arrays.stream(ControlRule.values()).filter(rule -> rule.isBrokenBy(deviations)).toList();
  }
}
