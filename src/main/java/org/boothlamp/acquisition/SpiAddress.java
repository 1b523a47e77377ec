package org.boothlamp.acquisition;

/**
 * Where a converter sits on the SPI bus. Immutable.
 *
 * @param bus number of the bus, 0 to 6
 * @param chipSelect number of the select line, 0 to 2
 * @param clockHz clock of the bus
 */
public record SpiAddress(int bus, int chipSelect, int clockHz) {

  /** The kernel's device file. */
  public String path() {
    return "/dev/spidev" + bus + "." + chipSelect;
  }
}
