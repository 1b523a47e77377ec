package org.boothlamp.boothlog;

import java.nio.ByteBuffer;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.report.RunTrace;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/** Reads a stored trace back to amps and volts. */
final class TraceReading {

  private static final String SCALE =
      "SELECT amps_per_count, current_zero_count, volts_per_count, voltage_zero_count"
          + " FROM segment WHERE id = ?";
  private static final String CHUNKS =
      "SELECT first_point, points FROM trace WHERE segment_id = ? ORDER BY first_point";

  private record Chunk(int firstPoint, byte[] points) {
    int end() {
      return firstPoint + points.length / TracePoints.POINT_BYTES;
    }
  }

  private static final String ZERO_KNOWN =
      "SELECT current_offset_counts IS NOT NULL FROM segment WHERE id = ?";

  private TraceReading() {}

  /** What a report computes a run again from, or null if there is no such segment. */
  static RunTrace runTrace(LogConnection log, long segmentId) throws SQLException {
    PairScale scale = scale(log, segmentId);
    if (scale == null) {
      return null;
    }
    SegmentTrace trace = read(log, segmentId);
    boolean[] fault = new boolean[trace.size()];
    for (int point = 0; point < fault.length; point++) {
      fault[point] = trace.signals[point] == Signal.FAULT;
    }
    return new RunTrace(scale, isZeroKnown(log, segmentId), trace.meanAmps, trace.meanVolts, fault);
  }

  private static boolean isZeroKnown(LogConnection log, long segmentId) throws SQLException {
    try (Columns row = log.bind(ZERO_KNOWN).whole(segmentId).rows()) {
      return row.next() && row.flag();
    }
  }

  /** The trace of a segment, or null if there is no such segment. */
  static SegmentTrace read(LogConnection log, long segmentId) throws SQLException {
    PairScale scale = scale(log, segmentId);
    if (scale == null) {
      return null;
    }
    List<Chunk> chunks = chunks(log, segmentId);
    SegmentTrace trace = new SegmentTrace(chunks.stream().mapToInt(Chunk::end).max().orElse(0));
    for (Chunk chunk : chunks) {
      fill(trace, chunk.firstPoint(), chunk.points(), scale);
    }
    return trace;
  }

  private static PairScale scale(LogConnection log, long segmentId) throws SQLException {
    try (Columns row = log.bind(SCALE).whole(segmentId).rows()) {
      return row.next()
          ? new PairScale(
              new ChannelScale(row.real(), row.real()), new ChannelScale(row.real(), row.real()))
          : null;
    }
  }

  private static List<Chunk> chunks(LogConnection log, long segmentId) throws SQLException {
    List<Chunk> chunks = new ArrayList<>();
    try (Columns row = log.bind(CHUNKS).whole(segmentId).rows()) {
      while (row.next()) {
        chunks.add(new Chunk((int) row.whole(), row.bytes()));
      }
    }
    return chunks;
  }

  /** Puts stored points into a trace that has room for them. */
  static void fill(SegmentTrace trace, int firstPoint, byte[] points, PairScale scale) {
    ByteBuffer values = TracePoints.littleEndian(points);
    int end = firstPoint + points.length / TracePoints.POINT_BYTES;
    for (int point = firstPoint; point < end; point++) {
      fillChannel(
          values, scale.current(), point, trace.meanAmps, trace.lowestAmps, trace.highestAmps);
      fillChannel(
          values, scale.voltage(), point, trace.meanVolts, trace.lowestVolts, trace.highestVolts);
      trace.signals[point] = signal(values.get());
    }
  }

  private static void fillChannel(
      ByteBuffer values,
      ChannelScale scale,
      int point,
      double[] means,
      double[] lowests,
      double[] highests) {
    means[point] = scale.toUnits(values.getFloat());
    double one = scale.toUnits(values.getShort());
    double other = scale.toUnits(values.getShort());
    if (!Double.isNaN(means[point])) {
      // A channel that is turned round turns its lowest count into its highest value.
      lowests[point] = Math.min(one, other);
      highests[point] = Math.max(one, other);
    }
  }

  /** A code this program does not know is no reason to show anything better. */
  private static Signal signal(byte code) {
    Signal known = Signal.ofCode(code);
    return known == null ? Signal.FAULT : known;
  }
}
