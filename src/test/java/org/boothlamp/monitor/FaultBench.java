package org.boothlamp.monitor;

import java.util.List;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.boothlamp.testing.PairScript;

/** A sound recording and the moments at which something can be done to it. */
record FaultBench(KnownRecording recording) {

  /**
   * A recording with a fault in it.
   *
   * @param visibleSeconds when it can be seen first
   * @param endSeconds when it is gone; infinite if it stays
   */
  record Injected(
      PairScale scale, List<PairScript.Part> parts, double visibleSeconds, double endSeconds) {}

  int rate() {
    return recording.pairsPerSecond();
  }

  double ampsPerCount() {
    return recording.scale().current().unitsPerCount();
  }

  double voltsPerCount() {
    return recording.scale().voltage().unitsPerCount();
  }

  Truth longest() {
    Truth longest = recording.segments().get(0);
    for (Truth segment : recording.segments()) {
      longest = length(segment) > length(longest) ? segment : longest;
    }
    return longest;
  }

  private static double length(Truth segment) {
    return segment.endSeconds() - segment.startSeconds();
  }

  /** Half a second and more of arc before it, if there is as much, and after it. */
  double midArc() {
    return longest().startSeconds() + 0.4 * length(longest());
  }

  /** Half a second after the last current, the machine without open-circuit volts. */
  double idle() {
    int dead = 0;
    for (int k = 0; k < recording.current().length; k++) {
      boolean none =
          Math.abs(recording.voltage()[k] * voltsPerCount()) < 1
              && Math.abs(recording.current()[k] * ampsPerCount()) < 8;
      dead = none ? dead + 1 : 0;
      if (dead > 0.7 * rate()) {
        return (double) k / rate();
      }
    }
    throw new AssertionError("never idle: " + recording.name());
  }

  int pair(double seconds) {
    return (int) Math.round(seconds * rate());
  }

  short[] current() {
    return recording.current();
  }

  short[] voltage() {
    return recording.voltage();
  }

  Injected changed(short[] current, short[] voltage, double visible) {
    return changed(recording.scale(), current, voltage, visible, Double.POSITIVE_INFINITY);
  }

  Injected changed(PairScale scale, short[] current, short[] voltage, double visible, double end) {
    return new Injected(scale, List.of(new PairScript.Part(0, current, voltage)), visible, end);
  }
}
