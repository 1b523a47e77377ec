package org.boothlamp.acquisition;

import com.pi4j.context.Context;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBus;
import com.pi4j.io.spi.SpiChipSelect;
import com.pi4j.io.spi.SpiMode;
import com.pi4j.io.spi.SpiProvider;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.util.function.Supplier;
import org.boothlamp.acquisition.SourceException.Reason;
import org.tinylog.Logger;

/**
 * An SPI bus through Pi4J, in a context of its own: nothing is detected, so nothing unexpected
 * answers, and Pi4J adds no shutdown hook that would race the order of closing. SPI mode 0, most
 * significant bit first. Confined to one thread.
 *
 * <p>The library creates objects for every transfer, 3.5 KB in version 2.8: at 5,000 pairs a second
 * that is 35 MB a second of short-lived garbage. No overload of its transfer creates less.
 */
final class Pi4jSpi implements SpiLink {

  private static final String NEXT_MOVE =
      "see that SPI is switched on in the board's set-up, that the user may open the device"
          + " (group spi), and that bus and chip_select are right";

  private final SpiAddress address;
  private final Supplier<? extends SpiProvider> providers;
  private Context context;
  private Spi spi;

  /** A bus of any provider; each opening takes a fresh one. */
  Pi4jSpi(SpiAddress address, Supplier<? extends SpiProvider> providers) {
    this.address = address;
    this.providers = providers;
  }

  /** The kernel's SPI device file. */
  static Pi4jSpi linuxFs(SpiAddress address) {
    return new Pi4jSpi(address, LinuxFsSpiProvider::newInstance);
  }

  @Override
  public void open() {
    try {
      context = OneProvider.context(providers.get());
      spi =
          context.create(
              Spi.newConfigBuilder(context)
                  .id("converter")
                  .bus(SpiBus.getByNumber(address.bus()))
                  .chipSelect(SpiChipSelect.getByNumber(address.chipSelect()))
                  .address(address.chipSelect())
                  .mode(SpiMode.MODE_0)
                  .baud(address.clockHz())
                  .build());
    } catch (RuntimeException | LinkageError failure) {
      close();
      throw new SourceException(
          Reason.MISSING, address.path(), Causes.words(failure), NEXT_MOVE, failure);
    }
  }

  @Override
  public void transfer(byte[] out, byte[] in) {
    int count;
    try {
      count = spi.transfer(out, 0, in, 0, out.length);
    } catch (RuntimeException failure) {
      throw failed(Causes.words(failure), failure);
    }
    if (count != out.length) {
      throw failed("transferred " + count + " bytes of " + out.length, null);
    }
  }

  private SourceException failed(String what, Throwable cause) {
    return new SourceException(
        Reason.FAILED,
        address.path(),
        "a transfer failed: " + what,
        "see that the converter is connected and that no other program uses the bus",
        cause);
  }

  /**
   * The device is taken out of the context's hands and closed here, once: the library closes it in
   * some orders of shutting down and not in others, and a file number closed twice may by then be
   * that of another file.
   */
  @Override
  public void close() {
    Spi oldSpi = spi;
    Context oldContext = context;
    spi = null;
    context = null;
    try {
      if (oldSpi != null) {
        oldContext.registry().remove(oldSpi.id());
        oldSpi.close();
      }
      if (oldContext != null) {
        oldContext.shutdown();
      }
    } catch (RuntimeException failure) {
      // A bus that failed may well fail to be closed, and nothing is left to do about it.
      Logger.debug(failure, "{} did not close in order", address.path());
    }
  }
}
