package org.boothlamp.acquisition;

/** A lamp signal on the wire; one object is filled again. Confined to one thread. */
public final class LampFrame {

  /** Number of the frame, modulo 256: 0 to 255. */
  public int counter;

  /** Code of the signal, 0 to 6 if the sender knows its trade. */
  public int signalCode;
}
