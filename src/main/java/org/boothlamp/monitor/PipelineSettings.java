package org.boothlamp.monitor;

import org.boothlamp.arc.ArcRule;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.signal.PairScale;

/**
 * Numbers of the path from counts to lamp. Immutable.
 *
 * @param scale counts to amps and volts
 * @param arc when an arc counts as burning
 * @param judging times of the judging
 * @param calibrations what the scale rests on
 */
public record PipelineSettings(
    PairScale scale, ArcRule arc, JudgingRule judging, CalibrationNumbers calibrations) {

  /** With the nominal scale. */
  public PipelineSettings(PairScale scale, ArcRule arc, JudgingRule judging) {
    this(scale, arc, judging, CalibrationNumbers.NONE);
  }

  /** The same rules for pairs of another scale. */
  public PipelineSettings scaledBy(PairScale other, CalibrationNumbers numbers) {
    return new PipelineSettings(other, arc, judging, numbers);
  }
}
