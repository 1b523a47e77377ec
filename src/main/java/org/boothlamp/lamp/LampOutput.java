package org.boothlamp.lamp;

import java.io.IOException;
import org.boothlamp.judging.Signal;

/**
 * One place where the signal becomes visible: pins, a serial line, a screen, a file.
 *
 * <p>{@link RefreshedLamp} calls every method from one thread of this output's own, so an output
 * needs no locks and may wait. Whatever it throws is counted and said once, and the output is tried
 * again; it must put up with being called again with the same state.
 */
public interface LampOutput extends AutoCloseable {

  /** What and where it is, for messages: "trace file lamp.csv". */
  String name();

  /**
   * Shows this state: called at each change, and again at least every 50 ms while it works.
   *
   * @param signal what is shown
   * @param lights the lights lit now, bits of {@link LampPattern}
   * @param samplesNanos time of the samples behind the signal, ns, on the source's clock
   * @throws IOException if the state could not be shown
   */
  void apply(Signal signal, int lights, long samplesNanos) throws IOException;

  /**
   * Called after a state was shown that somebody asked for: never called while nobody calls {@link
   * org.boothlamp.monitor.Lamp#show}, so a watchdog behind it notices.
   *
   * @throws IOException if the device failed
   */
  default void beat() throws IOException {}

  /**
   * Leaves the output dark and releases its device; called once, last.
   *
   * @throws IOException if the output could not be left dark
   */
  @Override
  void close() throws IOException;
}
