package org.boothlamp.lamp;

import java.util.concurrent.locks.LockSupport;
import java.util.function.LongConsumer;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;
import org.tinylog.Logger;

/**
 * Renders the shown signal on one output, at each change and at least every 50 ms. If nothing was
 * shown for {@link #STALE_NANOS} it shows fault by itself. Survives whatever the output throws.
 * {@link #show} and {@link #end} may come from another thread, one that shows and any that ends.
 */
final class LampRefresher implements Worker {

  /** Half of the second within which a lamp that nobody refreshes must be in fault. */
  static final long STALE_NANOS = 500_000_000L;

  static final long REFRESH_NANOS = 50_000_000L;

  private final String roleName;
  private final LampOutput output;
  private final LampPattern pattern;
  private final NanoClock clock;
  private final LongConsumer park;
  private final ShownSignals shown = new ShownSignals();
  private final OutputHealth health = new OutputHealth();

  /** Null until {@link #start}. */
  private volatile Thread thread;

  private volatile boolean ending;

  private Signal signal = Signal.DARK;
  private long beganNanos;
  private long lastShownNanos;
  private boolean closed;

  /**
   * A refresher for one output.
   *
   * @param roleName name of its thread
   * @param output where to render
   * @param pattern which lights a signal has
   * @param clock time of the pattern
   * @param park waits for so many ns, or until the thread is unparked
   */
  LampRefresher(
      String roleName, LampOutput output, LampPattern pattern, NanoClock clock, LongConsumer park) {
    this.roleName = roleName;
    this.output = output;
    this.pattern = pattern;
    this.clock = clock;
    this.park = park;
  }

  /** Takes a signal and wakes the thread; neither waits nor creates objects. */
  void show(Signal signalToShow, long samplesNanos) {
    shown.put(signalToShow, samplesNanos);
    LockSupport.unpark(thread);
  }

  /** Asks the thread to end now rather than after its rest. */
  void end() {
    ending = true;
    LockSupport.unpark(thread);
  }

  @Override
  public String roleName() {
    return roleName;
  }

  @Override
  public void start() {
    thread = Thread.currentThread();
    lastShownNanos = clock.nanoTime();
    beganNanos = lastShownNanos;
  }

  @Override
  public boolean step() {
    if (ending) {
      return false;
    }
    refresh(clock.nanoTime());
    // An interrupt would turn every wait to come into none, and nobody has a use for one here.
    Thread.interrupted();
    park.accept(restNanos(clock.nanoTime()));
    return true;
  }

  private void refresh(long nowNanos) {
    boolean wasShown = false;
    boolean wasTried = false;
    while (shown.next()) {
      wasShown = true;
      lastShownNanos = nowNanos;
      wasTried |= become(shown.signal(), nowNanos);
    }
    if (nowNanos - lastShownNanos >= STALE_NANOS) {
      wasTried |= become(Signal.FAULT, nowNanos);
    }
    if (!wasTried && !health.isResting(nowNanos)) {
      apply(nowNanos);
    }
    if (wasShown && !health.isResting(nowNanos)) {
      beat(nowNanos);
    }
  }

  /**
   * Goes over to a signal at once if it is another one, even if the output rests after a failure.
   */
  private boolean become(Signal next, long nowNanos) {
    if (next == signal) {
      return false;
    }
    signal = next;
    beganNanos = nowNanos;
    apply(nowNanos);
    return true;
  }

  private void apply(long nowNanos) {
    try {
      output.apply(signal, pattern.lights(signal, nowNanos - beganNanos), shown.samplesNanos());
      worked();
    } catch (Throwable thrown) {
      failed(thrown, nowNanos);
    }
  }

  private void beat(long nowNanos) {
    try {
      output.beat();
    } catch (Throwable thrown) {
      failed(thrown, nowNanos);
    }
  }

  private void worked() {
    long failuresInRow = health.worked();
    if (failuresInRow > 0) {
      Logger.info("lamp: {} works again after {} failures", output.name(), failuresInRow);
    }
  }

  /**
   * Even an error of the virtual machine must not leave the lamp as it is: the next try may work.
   */
  private void failed(Throwable thrown, long nowNanos) {
    if (health.failed(nowNanos)) {
      Logger.warn(
          "lamp: {} failed: {}; it is tried again at least every second: check its device, wiring"
              + " or disk",
          output.name(),
          thrown);
    }
  }

  private long restNanos(long nowNanos) {
    return Math.min(REFRESH_NANOS, pattern.nanosToChange(signal, nowNanos - beganNanos));
  }

  /** Shows what was shown last, so that no change is missing, and leaves the output dark. */
  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    if (thread != null) {
      refresh(clock.nanoTime());
    }
    try {
      output.close();
    } catch (Throwable thrown) {
      Logger.warn(
          "lamp: {} could not be left dark: {}; look at the lamp, and switch it off by hand",
          output.name(),
          thrown);
    }
  }

  String outputName() {
    return output.name();
  }

  long failures() {
    return health.failures();
  }

  long skipped() {
    return shown.skipped();
  }
}
