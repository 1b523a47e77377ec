package org.boothlamp.acquisition;

import java.io.ByteArrayOutputStream;
import org.boothlamp.acquisition.SourceException.Reason;

/** A line that is two buffers, cut and mended by the test. Confined to one thread. */
final class MemoryLine implements ByteLine {

  private static final SourceException CUT =
      new SourceException(Reason.MISSING, "memory", "cut", "mend it");

  private final byte[] arrived = new byte[1 << 20];
  private int from;
  private int to;
  private boolean cut;
  private boolean open;
  private int openings;
  private long longestWaitNanos;
  final ByteArrayOutputStream written = new ByteArrayOutputStream();

  /** Lets bytes arrive at the reader. */
  void send(byte[] bytes) {
    send(bytes, bytes.length);
  }

  void send(byte[] bytes, int length) {
    if (from == to) {
      from = 0;
      to = 0;
    }
    System.arraycopy(bytes, 0, arrived, to, length);
    to += length;
  }

  /** Cuts the line: what was on its way is lost. */
  void cut() {
    cut = true;
    open = false;
    from = to;
  }

  /** Mends the line; the next read opens it. */
  void mend() {
    cut = false;
  }

  long longestWaitNanos() {
    return longestWaitNanos;
  }

  @Override
  public int read(byte[] buffer, long waitNanos) {
    longestWaitNanos = Math.max(longestWaitNanos, waitNanos);
    if (cut) {
      return DOWN;
    }
    if (!open) {
      open = true;
      openings++;
    }
    int count = Math.min(buffer.length, to - from);
    System.arraycopy(arrived, from, buffer, 0, count);
    from += count;
    return count;
  }

  @Override
  public boolean write(byte[] bytes, int length) {
    if (!open) {
      return false;
    }
    written.write(bytes, 0, length);
    return true;
  }

  @Override
  public int openings() {
    return openings;
  }

  @Override
  public SourceException failure() {
    return cut ? CUT : null;
  }

  @Override
  public void close() {
    cut = true;
    open = false;
  }
}
