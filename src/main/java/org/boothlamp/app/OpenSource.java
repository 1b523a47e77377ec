package org.boothlamp.app;

import org.boothlamp.lamp.LampFrameSender;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.signal.PairScale;

/**
 * A source with what belongs to it.
 *
 * @param source the source itself
 * @param scale scale of its counts
 * @param frames takes lamp frames for the board behind it; null if there is no such board
 * @param wallClock time of day of its samples
 * @param pacing whether it can be kept waiting
 * @param description for people
 */
record OpenSource(
    SampleSource source,
    PairScale scale,
    LampFrameSender frames,
    WallClock wallClock,
    Pacing pacing,
    String description) {

  /** Whether samples come whether anybody is ready or not. */
  enum Pacing {
    /** In real time: nothing may keep the sampler waiting. */
    LIVE,
    /** As fast as they are taken. */
    PATIENT
  }
}
