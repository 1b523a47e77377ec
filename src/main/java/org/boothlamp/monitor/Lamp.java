package org.boothlamp.monitor;

import org.boothlamp.judging.Signal;

/**
 * The three-level light.
 *
 * <p>{@link #show} is called from the sampler's thread at every change and at least every 0.1 s; it
 * must not wait and creates no objects. If the calls stop, the lamp ends in fault or dark by itself
 * within 1 s. {@link #close} leaves it dark; a second call does nothing.
 */
public interface Lamp extends AutoCloseable {

  /**
   * Shows a signal from now on.
   *
   * @param signal what to show
   * @param monotonicNanos time of the samples behind it, on the source's clock
   */
  void show(Signal signal, long monotonicNanos);

  /** Turns the lamp dark and releases its device. */
  @Override
  void close();
}
