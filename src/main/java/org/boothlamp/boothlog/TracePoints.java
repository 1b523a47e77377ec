package org.boothlamp.boothlog;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.boothlamp.monitor.LogEntry;

/**
 * Trace points as they are stored, little-endian, 17 bytes each:
 *
 * <pre>
 *   0        4      6      8        12     14     16
 *  +--------+------+------+--------+------+------+--------+
 *  | f32    | i16  | i16  | f32    | i16  | i16  | u8     |
 *  | mean   | low  | high | mean   | low  | high | signal |
 *  +--------+------+------+--------+------+------+--------+
 *   current counts         voltage counts
 * </pre>
 *
 * <p>A mean that is not a number: nothing arrived in that time. Holds a few seconds of points, made
 * once. Confined to one thread.
 */
final class TracePoints {

  /** Bytes of one point. */
  static final int POINT_BYTES = 17;

  /** Points held: 5 s. */
  static final int CAPACITY = 5 * LogEntry.TRACE_HZ;

  private final ByteBuffer buffer = littleEndian(new byte[CAPACITY * POINT_BYTES]);

  /** Stored points, to be read one value after the other. */
  static ByteBuffer littleEndian(byte[] points) {
    return ByteBuffer.wrap(points).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** Adds the point of an entry; not to be called when full. */
  void add(LogEntry entry) {
    buffer
        .putFloat(entry.meanCurrentCount)
        .putShort(entry.lowestCurrentCount)
        .putShort(entry.highestCurrentCount)
        .putFloat(entry.meanVoltageCount)
        .putShort(entry.lowestVoltageCount)
        .putShort(entry.highestVoltageCount)
        .put(entry.signalCode);
  }

  /** Points held now. */
  int size() {
    return buffer.position() / POINT_BYTES;
  }

  boolean isFull() {
    return !buffer.hasRemaining();
  }

  /** All points in their stored form; none are held afterwards. */
  byte[] take() {
    byte[] points = Arrays.copyOf(buffer.array(), buffer.position());
    buffer.clear();
    return points;
  }
}
