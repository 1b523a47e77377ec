package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;

/** A trace as a test writes it down, stretch by stretch. */
final class TraceBuilder {

  private record Point(double amps, double volts, double spread, Signal signal) {}

  private final List<Point> points = new ArrayList<>();

  /** Amps and volts, signed, for some seconds; the extremes lie a tenth to either side. */
  TraceBuilder burn(double seconds, double amps, double volts, Signal signal) {
    return add(seconds, new Point(amps, volts, 0.1, signal));
  }

  /** An alternating current of this height. */
  TraceBuilder alternate(double seconds, double amps, double volts, Signal signal) {
    long count = Math.round(seconds / RunTrace.POINT_SECONDS);
    for (int k = 0; k < count; k++) {
      points.add(new Point(amps / 1_000, volts / 1_000, 1_000, signal));
    }
    return this;
  }

  /** Nothing arrives. */
  TraceBuilder miss(double seconds) {
    return add(seconds, new Point(Double.NaN, Double.NaN, 0, Signal.FAULT));
  }

  private TraceBuilder add(double seconds, Point point) {
    long count = Math.round(seconds / RunTrace.POINT_SECONDS);
    for (int k = 0; k < count; k++) {
      points.add(point);
    }
    return this;
  }

  WeldTrace build() {
    return new WeldTrace(
        points.stream().mapToDouble(Point::amps).toArray(),
        points.stream().mapToDouble(p -> low(p.amps, p.spread)).toArray(),
        points.stream().mapToDouble(p -> high(p.amps, p.spread)).toArray(),
        points.stream().mapToDouble(Point::volts).toArray(),
        points.stream().mapToDouble(p -> low(p.volts, p.spread)).toArray(),
        points.stream().mapToDouble(p -> high(p.volts, p.spread)).toArray(),
        points.stream().map(Point::signal).toArray(Signal[]::new));
  }

  private static double low(double value, double spread) {
    return value - Math.abs(value) * spread;
  }

  private static double high(double value, double spread) {
    return value + Math.abs(value) * spread;
  }

  /** The trace as a replay of a run without faults. */
  WeldReplay of(RunBuilder run) {
    return new WeldReplay(run.build(), build(), List.of());
  }
}
