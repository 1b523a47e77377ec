package org.boothlamp.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.judging.Signal;

/**
 * A run, and another one beside it whose start is laid over its start. Immutable.
 *
 * @param one the run
 * @param beside the other run, or null
 */
public record SideBySide(WeldReplay one, WeldReplay beside) {

  /** Frames until both are over. */
  public int frames() {
    return beside == null ? one.frames() : Math.max(one.frames(), beside.frames());
  }

  /** Seconds until both are over. */
  public double lengthSeconds() {
    return beside == null
        ? one.lengthSeconds()
        : Math.max(one.lengthSeconds(), beside.lengthSeconds());
  }

  /** What both come to; how steady the hand was is the scatter of the averages. */
  public List<ComparedFigure> figures() {
    return List.of(
        figure("arc_s", "s", 1, replay -> replay.run().lengthSeconds()),
        figure("mean_amps", "A", 1, replay -> replay.run().amps()),
        figure("amps_scatter_a", "A", 1, replay -> scatter(replay, ReplayFrame::averageAmps)),
        figure("mean_volts", "V", 1, replay -> replay.run().volts()),
        figure("volts_scatter_v", "V", 2, replay -> scatter(replay, ReplayFrame::averageVolts)),
        figure("mean_power_w", "W", 0, replay -> replay.run().meanWatts()),
        figure("energy_kj", "kJ", 1, replay -> replay.run().energyJoules() / 1_000),
        figure("inside_percent", "%", 1, replay -> 100 * replay.run().insideShare()),
        figure("green_s", "s", 1, replay -> replay.run().greenSeconds()),
        figure("amber_s", "s", 1, replay -> replay.run().amberSeconds()),
        figure("red_s", "s", 1, replay -> replay.run().redSeconds()),
        figure("excursions", "", 0, replay -> replay.run().excursions().size()),
        figure("arc_outs", "", 0, replay -> replay.run().arcOuts()),
        figure("shorts_per_s", "1/s", 1, replay -> replay.run().shortCircuitsPerSecond()));
  }

  private ComparedFigure figure(
      String key, String unit, int decimals, ToDoubleFunction<WeldReplay> value) {
    double other = beside == null ? Double.NaN : value.applyAsDouble(beside);
    return new ComparedFigure(key, unit, decimals, value.applyAsDouble(one), other);
  }

  /** Standard deviation (n - 1) of an average over the time that was judged; NaN if none was. */
  private static double scatter(WeldReplay replay, ToDoubleFunction<ReplayFrame> average) {
    double sum = 0;
    double squares = 0;
    int count = 0;
    for (int k = 0; k < replay.frames(); k++) {
      ReplayFrame frame = replay.frame(k);
      double value = average.applyAsDouble(frame);
      if (isJudged(frame.signal()) && !Double.isNaN(value)) {
        sum += value;
        squares += value * value;
        count++;
      }
    }
    double aboutMean = squares - sum * sum / count;
    return count < 2 ? Double.NaN : Math.sqrt(Math.max(0, aboutMean) / (count - 1));
  }

  private static boolean isJudged(Signal signal) {
    return signal == Signal.GREEN || signal == Signal.AMBER || signal == Signal.RED;
  }
}
