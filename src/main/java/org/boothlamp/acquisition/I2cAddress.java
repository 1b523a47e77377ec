package org.boothlamp.acquisition;

import java.util.Locale;

/**
 * Where a converter sits on the I2C bus. Immutable.
 *
 * @param bus number of the bus, as in /dev/i2c-1
 * @param address 7-bit address, 0x48 to 0x4B
 */
public record I2cAddress(int bus, int address) {

  /** Bus and address in words. */
  public String path() {
    return String.format(Locale.ROOT, "/dev/i2c-%d address 0x%02x", bus, address);
  }
}
