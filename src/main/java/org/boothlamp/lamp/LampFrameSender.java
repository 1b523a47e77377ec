package org.boothlamp.lamp;

import java.io.IOException;
import org.boothlamp.judging.Signal;

/** Sends lamp frames to the board that drives the lamp; the serial line's owner is one. */
@FunctionalInterface
public interface LampFrameSender {

  /**
   * Sends one lamp frame.
   *
   * @param counter number of the frame, 0 to 255 and round again
   * @param signal what the board is to show
   * @throws IOException if the line did not take it
   */
  void sendLampFrame(int counter, Signal signal) throws IOException;
}
