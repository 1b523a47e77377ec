package org.boothlamp.lamp;

import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.NanoClock;

/**
 * A lamp that also says no: {@link #refuse} shows fault for a second. Only in the place of idle,
 * because what an arc or a fault of the sensors has to say is worth more than a wrong badge: red
 * must never hide behind it, nor must fault be taken for one. {@link #refuse} may come from any
 * thread; showing waits for nothing and creates no objects.
 */
public final class RefusalLamp implements Lamp {

  /** One turn of the fault's two lights. */
  static final long REFUSAL_NANOS = 1_000_000_000L;

  private final Lamp lamp;
  private final NanoClock clock;
  private volatile boolean refusing;
  private volatile long untilNanos;

  public RefusalLamp(Lamp lamp, NanoClock clock) {
    this.lamp = lamp;
    this.clock = clock;
  }

  /** Shows fault from now on for a second, as far as the lamp is idle. */
  public void refuse() {
    untilNanos = clock.nanoTime() + REFUSAL_NANOS;
    refusing = true;
  }

  @Override
  public void show(Signal signal, long monotonicNanos) {
    lamp.show(signal == Signal.IDLE && isRefusing() ? Signal.FAULT : signal, monotonicNanos);
  }

  private boolean isRefusing() {
    if (refusing && clock.nanoTime() - untilNanos >= 0) {
      refusing = false;
    }
    return refusing;
  }

  @Override
  public void close() {
    lamp.close();
  }
}
