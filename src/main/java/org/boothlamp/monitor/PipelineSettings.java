package org.boothlamp.monitor;

import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.signal.PairScale;

/**
 * Numbers of the path from counts to lamp. Immutable.
 *
 * @param scale counts to amps and volts
 * @param arc when an arc counts as burning
 * @param judging times of the judging
 */
public record PipelineSettings(PairScale scale, ArcRule arc, JudgingRule judging) {}
