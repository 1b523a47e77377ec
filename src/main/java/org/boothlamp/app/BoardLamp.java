package org.boothlamp.app;

import java.io.IOException;
import org.boothlamp.acquisition.ByteLine;
import org.boothlamp.acquisition.FrameEncoder;
import org.boothlamp.acquisition.LampFrame;
import org.boothlamp.judging.Signal;
import org.boothlamp.lamp.LampFrameSender;

/** Sends lamp frames over the line that the samples come from. Confined to one thread. */
final class BoardLamp implements LampFrameSender {

  private final ByteLine line;
  private final FrameEncoder encoder = new FrameEncoder();
  private final LampFrame frame = new LampFrame();
  private final byte[] wire = new byte[FrameEncoder.LONGEST_WIRE_BYTES];

  BoardLamp(ByteLine line) {
    this.line = line;
  }

  @Override
  public void sendLampFrame(int counter, Signal signal) throws IOException {
    frame.counter = counter;
    frame.signalCode = signal.code();
    if (!line.write(wire, encoder.lamp(frame, wire))) {
      throw new IOException("the serial line did not take the lamp frame");
    }
  }
}
