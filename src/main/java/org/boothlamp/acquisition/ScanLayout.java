package org.boothlamp.acquisition;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where current, voltage and time stamp lie in a scan: in order of their index, each at a multiple
 * of its own size, and the whole padded to a multiple of the largest; Documentation/iio/
 * iio_devbuf.rst and iio_compute_scan_bytes of the kernel. Immutable.
 */
final class ScanLayout {

  private final ScanElement current;
  private final ScanElement voltage;
  private final ScanElement stamp;
  private final int currentOffset;
  private final int voltageOffset;
  private final int stampOffset;
  private final int bytes;

  ScanLayout(ScanElement current, ScanElement voltage, ScanElement stamp) {
    this.current = current;
    this.voltage = voltage;
    this.stamp = stamp;
    List<ScanElement> elements =
        Stream.of(current, voltage, stamp)
            .sorted(Comparator.comparingInt(ScanElement::index))
            .toList();
    currentOffset = offsetOf(current, elements);
    voltageOffset = offsetOf(voltage, elements);
    stampOffset = offsetOf(stamp, elements);
    int largest = elements.stream().mapToInt(ScanElement::bytes).max().orElseThrow();
    bytes = aligned(offsetOf(null, elements), largest);
  }

  /** Offset of an element, or of the end of them all. */
  private static int offsetOf(ScanElement wanted, List<ScanElement> elements) {
    int offset = 0;
    for (ScanElement element : elements) {
      offset = aligned(offset, element.bytes());
      if (element == wanted) {
        return offset;
      }
      offset += element.bytes();
    }
    return offset;
  }

  private static int aligned(int offset, int to) {
    return (offset + to - 1) / to * to;
  }

  /** Bytes of a scan. */
  int bytes() {
    return bytes;
  }

  short current(byte[] scan) {
    return (short) current.value(scan, currentOffset);
  }

  short voltage(byte[] scan) {
    return (short) voltage.value(scan, voltageOffset);
  }

  /** Nanoseconds by the clock that the kernel was told to use. */
  long stampNanos(byte[] scan) {
    return stamp.value(scan, stampOffset);
  }

  /** Lowest count of both channels; they are of one converter. */
  int lowestCount() {
    return (int) current.lowest();
  }

  /** Highest count, likewise. */
  int highestCount() {
    return (int) current.highest();
  }
}
