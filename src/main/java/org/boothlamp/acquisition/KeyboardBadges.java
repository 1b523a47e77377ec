package org.boothlamp.acquisition;

import com.sun.jna.Native;
import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.tinylog.Logger;

/**
 * A badge reader that types like a keyboard: digits and letters, then Enter. Its keys are kept from
 * consoles, so that nobody's code ends up there. Confined to one thread.
 */
public final class KeyboardBadges implements BadgeReader {

  private static final long RETRY_NANOS = 500_000_000L;
  private static final int TYPE_SYNC = 0;
  private static final int TYPE_KEY = 1;

  /** The kernel had no room: events are missing. */
  private static final int SYNC_DROPPED = 3;

  private static final int RELEASED = 0;
  private static final int PRESSED = 1;

  private final String path;
  private final InputEventLayout layout;
  private final NanoClock clock;
  private final BadgeText text = new BadgeText();
  private final Queue<String> codes = new ArrayDeque<>();
  private InputDevice device;
  private SourceException failure;
  private boolean tried;
  private long lastTryNanos;
  private boolean shift;

  /**
   * A reader that is an input device, not opened yet.
   *
   * @param path device file such as one of /dev/input/by-id
   */
  public KeyboardBadges(String path) {
    this(
        path,
        Native.LONG_SIZE == 8 ? InputEventLayout.BITS_64 : InputEventLayout.BITS_32,
        NanoClock.SYSTEM);
  }

  KeyboardBadges(String path, InputEventLayout layout, NanoClock clock) {
    this.path = path;
    this.layout = layout;
    this.clock = clock;
  }

  @Override
  public String next(long waitNanos) {
    if (codes.isEmpty()) {
      if (ensureOpen()) {
        take(device.read((int) TimeUnit.NANOSECONDS.toMillis(waitNanos)));
      } else {
        LockSupport.parkNanos(waitNanos);
      }
    }
    return codes.poll();
  }

  private boolean ensureOpen() {
    if (device != null) {
      return true;
    }
    if (!tried || clock.nanoTime() - lastTryNanos >= RETRY_NANOS) {
      tried = true;
      lastTryNanos = clock.nanoTime();
      tryToOpen();
    }
    return device != null;
  }

  private void tryToOpen() {
    InputDevice opened = null;
    try {
      opened = InputDevice.open(path, layout.bytes());
      opened.grab();
      device = opened;
      forgetKeys();
      tell(null);
    } catch (SourceException refused) {
      if (opened != null) {
        opened.close();
      }
      tell(refused);
    }
  }

  /** Logs each change once: tries go on twice a second, for days if need be. */
  private void tell(SourceException now) {
    String before = failure == null ? "" : failure.getMessage();
    if (now == null) {
      Logger.info("badge reader {} is open", path);
    } else if (!now.getMessage().equals(before)) {
      Logger.warn("badge reader {}; trying again twice a second", now.getMessage());
    }
    failure = now;
  }

  private void forgetKeys() {
    text.clear();
    shift = false;
  }

  private void take(ByteBuffer events) {
    if (events == null) {
      close();
      tell(
          new SourceException(Reason.FAILED, path, "the badge reader is gone", "plug it in again"));
      return;
    }
    for (int i = 0; i < events.limit() / layout.bytes(); i++) {
      take(layout.type(events, i), layout.code(events, i), layout.value(events, i));
    }
  }

  private void take(int type, int code, int value) {
    if (type == TYPE_SYNC && code == SYNC_DROPPED) {
      forgetKeys();
    } else if (type == TYPE_KEY && BadgeKeys.isShift(code)) {
      shift = value != RELEASED;
    } else if (type == TYPE_KEY && value == PRESSED) {
      press(code);
    }
  }

  private void press(int key) {
    long now = clock.nanoTime();
    if (!BadgeKeys.isEnter(key)) {
      text.add(BadgeKeys.character(key, shift), now);
      return;
    }
    String code = text.end(now);
    if (code != null) {
      codes.add(code);
    }
  }

  @Override
  public SourceException failure() {
    return failure;
  }

  @Override
  public void close() {
    if (device != null) {
      device.close();
      device = null;
    }
  }
}
