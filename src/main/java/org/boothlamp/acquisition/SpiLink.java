package org.boothlamp.acquisition;

/**
 * The wire to a converter on SPI: {@link Pi4jSpi} is the real one. Opened again after it was
 * closed. Confined to one thread.
 */
interface SpiLink {

  /**
   * Opens the bus.
   *
   * @throws SourceException if it cannot be opened, with the next move; nothing is left open
   */
  void open();

  /**
   * Sends a frame and receives one of the same length.
   *
   * @throws SourceException if the transfer failed; {@code in} is then undefined
   */
  void transfer(byte[] out, byte[] in);

  /** Closes the bus whatever its state; does not throw. */
  void close();
}
