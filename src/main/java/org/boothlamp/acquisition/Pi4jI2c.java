package org.boothlamp.acquisition;

import com.pi4j.context.Context;
import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CProvider;
import com.pi4j.plugin.linuxfs.provider.i2c.LinuxFsI2CProvider;
import java.util.function.Supplier;
import org.boothlamp.acquisition.SourceException.Reason;
import org.tinylog.Logger;

/**
 * A converter on an I2C bus through Pi4J, in a context of its own. Only plain writes and reads are
 * used: the library's writeReadRegisterWord does no I/O in version 2.8. Its native part exists for
 * ARM only; elsewhere opening fails and says so. Confined to one thread.
 *
 * <p>The library creates a few small objects for every message.
 */
final class Pi4jI2c implements I2cLink {

  private static final String NEXT_MOVE =
      "see that I2C is switched on in the board's set-up, that the user may open the device"
          + " (group i2c), and that bus and address are right";

  private final I2cAddress address;
  private final Supplier<? extends I2CProvider> providers;
  private Context context;
  private I2C device;

  /** A bus of any provider; each opening takes a fresh one. */
  Pi4jI2c(I2cAddress address, Supplier<? extends I2CProvider> providers) {
    this.address = address;
    this.providers = providers;
  }

  /** The kernel's I2C device file. */
  static Pi4jI2c linuxFs(I2cAddress address) {
    return new Pi4jI2c(address, LinuxFsI2CProvider::newInstance);
  }

  @Override
  public void open() {
    try {
      context = OneProvider.context(providers.get());
      device =
          context.create(
              I2C.newConfigBuilder(context)
                  .id("converter")
                  .bus(address.bus())
                  .device(address.address())
                  .build());
    } catch (RuntimeException | LinkageError failure) {
      close();
      throw new SourceException(
          Reason.MISSING, address.path(), Causes.words(failure), NEXT_MOVE, failure);
    }
  }

  @Override
  public void write(byte[] bytes, int length) {
    int count;
    try {
      count = device.write(bytes, 0, length);
    } catch (RuntimeException failure) {
      throw failed("writing", Causes.words(failure), failure);
    }
    expect(length, count, "writing");
  }

  @Override
  public void read(byte[] into, int length) {
    int count;
    try {
      count = device.read(into, 0, length);
    } catch (RuntimeException failure) {
      throw failed("reading", Causes.words(failure), failure);
    }
    expect(length, count, "reading");
  }

  private void expect(int length, int count, String what) {
    if (count != length) {
      throw failed(what, count + " bytes of " + length, null);
    }
  }

  private SourceException failed(String doing, String what, Throwable cause) {
    return new SourceException(
        Reason.FAILED,
        address.path(),
        doing + " failed: " + what,
        "see that the converter has power, that both lines have their pull-up resistors, and that"
            + " the address pin is wired as in the settings",
        cause);
  }

  /** The provider closes the bus with the context. */
  @Override
  public void close() {
    device = null;
    Context old = context;
    context = null;
    if (old == null) {
      return;
    }
    try {
      old.shutdown();
    } catch (RuntimeException failure) {
      // A bus that failed may well fail to be closed, and nothing is left to do about it.
      Logger.debug(failure, "{} did not close in order", address.path());
    }
  }
}
