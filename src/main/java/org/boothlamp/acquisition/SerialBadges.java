package org.boothlamp.acquisition;

import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.monitor.NanoClock;

/** A badge reader on a serial line. Confined to one thread. */
public final class SerialBadges implements BadgeReader {

  /** A person notices nothing of it, and the line is not looked at all the time. */
  private static final long LOOK_NANOS = 50_000_000L;

  private final ByteLine line;
  private final BadgeEnding ending;
  private final NanoClock clock;
  private final BadgeText text = new BadgeText();
  private final Queue<String> codes = new ArrayDeque<>();
  private final byte[] buffer = new byte[256];
  private int openings;

  /**
   * A reader on a line, which it closes.
   *
   * @param clock to tell one code from the next
   */
  public SerialBadges(ByteLine line, BadgeEnding ending, NanoClock clock) {
    this.line = line;
    this.ending = ending;
    this.clock = clock;
  }

  /**
   * A reader at a port, not opened yet.
   *
   * @param path device file or a link to one
   * @param baud bits per second
   */
  public static SerialBadges at(String path, int baud, BadgeEnding ending) {
    return new SerialBadges(new SerialLine(path, baud, "badge reader"), ending, NanoClock.SYSTEM);
  }

  @Override
  public String next(long waitNanos) {
    long start = clock.nanoTime();
    while (codes.isEmpty()) {
      // Without a wait of its own: the line would look every 3 ms.
      take(line.read(buffer, 0));
      if (!codes.isEmpty() || clock.nanoTime() - start >= waitNanos) {
        break;
      }
      LockSupport.parkNanos(Math.min(LOOK_NANOS, waitNanos));
    }
    return codes.poll();
  }

  private void take(int count) {
    if (line.openings() != openings) {
      openings = line.openings();
      text.clear();
    }
    long now = clock.nanoTime();
    for (int i = 0; i < count; i++) {
      take((char) (buffer[i] & 0xFF), now);
    }
  }

  private void take(char character, long now) {
    if (!ending.isEnd(character)) {
      text.add(character, now);
      return;
    }
    String code = text.end(now);
    if (code != null) {
      codes.add(code);
    }
  }

  @Override
  public SourceException failure() {
    return line.failure();
  }

  @Override
  public void close() {
    line.close();
  }
}
