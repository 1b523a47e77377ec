package org.boothlamp.monitor;

import org.boothlamp.judging.JudgingPlan;

/**
 * Who welds now, and against what. Immutable.
 *
 * @param trainee trainee code; empty if nobody signed in
 * @param plan the pass to judge by, or null if none is loaded: the lamp then stays at settling
 */
public record Assignment(String trainee, JudgingPlan plan) {

  /** Nobody signed in and no procedure loaded. */
  public static final Assignment NONE = new Assignment("", null);
}
