package org.boothlamp.acquisition;

/**
 * The wire to a converter on I2C: {@link Pi4jI2c} is the real one. Opened again after it was
 * closed. Confined to one thread.
 */
interface I2cLink {

  /**
   * Opens the bus.
   *
   * @throws SourceException if it cannot be opened, with the next move; nothing is left open
   */
  void open();

  /**
   * Writes the first {@code length} bytes in one message.
   *
   * @throws SourceException if the converter did not acknowledge them
   */
  void write(byte[] bytes, int length);

  /**
   * Reads {@code length} bytes in one message.
   *
   * @throws SourceException if the converter did not answer
   */
  void read(byte[] into, int length);

  /** Closes the bus whatever its state; does not throw. */
  void close();
}
