package org.boothlamp.lamp;

import java.io.IOException;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.NanoClock;

/**
 * The lamp on a front-end board: a lamp frame at each change and every 0.25 s. The board makes the
 * lights of a signal by itself, and shows fault by itself when no frame came for 1 s. Confined to
 * one thread.
 */
public final class SerialLamp implements LampOutput {

  private static final long REPEAT_NANOS = 250_000_000L;
  private static final int COUNTER_MASK = 0xFF;

  private final LampFrameSender sender;
  private final NanoClock clock;
  private int counter;

  /** Signal of the last frame that was sent; null before the first. */
  private Signal sent;

  private long sentNanos;

  /**
   * A lamp behind a serial line.
   *
   * @param sender takes the frames
   * @param clock says when 0.25 s are over
   */
  public SerialLamp(LampFrameSender sender, NanoClock clock) {
    this.sender = sender;
    this.clock = clock;
  }

  @Override
  public String name() {
    return "serial front end's lamp";
  }

  @Override
  public void apply(Signal signal, int lights, long samplesNanos) throws IOException {
    long nowNanos = clock.nanoTime();
    if (signal != sent || nowNanos - sentNanos >= REPEAT_NANOS) {
      send(signal, nowNanos);
    }
  }

  private void send(Signal signal, long nowNanos) throws IOException {
    sender.sendLampFrame(counter, signal);
    counter = (counter + 1) & COUNTER_MASK;
    sent = signal;
    sentNanos = nowNanos;
  }

  @Override
  public void close() throws IOException {
    send(Signal.DARK, clock.nanoTime());
  }
}
