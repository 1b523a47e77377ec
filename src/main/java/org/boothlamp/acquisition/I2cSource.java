package org.boothlamp.acquisition;

import java.util.Locale;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.ShortCircuitRule;

/**
 * Pairs from a converter on I2C that has one converter for four inputs: each pair is two single
 * conversions, the current's and then the voltage's.
 *
 * <p>That is slow. A conversion takes 1/rate, and starting it, asking whether it is over and
 * fetching it some 12 bytes on the bus: 0.3 ms at 400 kHz, 1.2 ms at 100 kHz, and the calls as much
 * again. So an ADS1115 at its fastest gives at most 430 pairs a second and about 250 in practice,
 * an ADS1015 at most 1650 and about 600 (calculated, not measured on a board). The two counts of a
 * pair are half that time apart: means and excursions are right, but not the power of a current
 * that pulses, and short circuits cannot be counted.
 *
 * <p>The configuration is read back with every conversion, so a converter that lost it by a dip of
 * its supply, or another device at its address, is not taken for one that measures.
 *
 * <p>Confined to one thread, but {@link #trouble} and {@link #performance} may be asked from any.
 */
public final class I2cSource extends PolledSource {

  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  /** The oscillator may be 10 % slow (SBAS444D, from memory); the rest is for the bus. */
  private static final long PATIENCE_NANOS = 5_000_000L;

  private static final long POLL_NANOS = 50_000L;

  private final I2cLink link;
  private final I2cDevice device;
  private final String name;
  private final NanoClock clock;
  private final Pause pause;
  private final int currentConfig;
  private final int voltageConfig;
  private final long conversionNanos;
  private final String limits;
  private final byte[] bytes = new byte[3];

  I2cSource(
      I2cLink link,
      String where,
      I2cDevice device,
      I2cSampling sampling,
      NanoClock clock,
      Pause pause) {
    super(format(where, device, sampling), clock, pause);
    this.link = link;
    this.device = device;
    this.clock = clock;
    this.pause = pause;
    name = format().device();
    currentConfig = config(device, sampling, sampling.channels().current());
    voltageConfig = config(device, sampling, sampling.channels().voltage());
    conversionNanos = NANOS_PER_SECOND / sampling.conversionsPerSecond();
    limits = limits(device, sampling);
  }

  private static String limits(I2cDevice device, I2cSampling sampling) {
    return String.format(
        Locale.ROOT,
        "at most %d pairs/s: short circuits are not measured, they need %d; current and voltage are"
            + " taken in turn, at least %.1f ms apart: power and energy of a current that pulses are"
            + " not exact; %.4g µV a count, up to %.3f V",
        sampling.conversionsPerSecond() / 2,
        ShortCircuitRule.LEAST_PAIRS_PER_SECOND,
        1e3 / sampling.conversionsPerSecond(),
        device.voltsPerCount(sampling.fullScaleVolts()) * 1e6,
        sampling.fullScaleVolts());
  }

  private static SourceFormat format(String where, I2cDevice device, I2cSampling sampling) {
    int highest = device.highestCount();
    String name = device.word() + " at " + where;
    return new SourceFormat(sampling.pairsPerSecond(), -highest - 1, highest, name);
  }

  private static int config(I2cDevice device, I2cSampling sampling, int channel) {
    return device.config(channel, sampling.fullScaleVolts(), sampling.conversionsPerSecond());
  }

  /** A converter behind the kernel's I2C device file; not opened before the first read. */
  public static I2cSource at(I2cAddress address, I2cDevice device, I2cSampling sampling) {
    return new I2cSource(
        Pi4jI2c.linuxFs(address),
        address.path(),
        device,
        sampling,
        NanoClock.SYSTEM,
        new DeadlinePause());
  }

  @Override
  public String limits() {
    return limits;
  }

  @Override
  void connect() {
    link.open();
  }

  @Override
  void disconnect() {
    link.close();
  }

  @Override
  void takePair(short[] current, short[] voltage, int at) {
    current[at] = convert(currentConfig);
    voltage[at] = convert(voltageConfig);
  }

  private short convert(int config) {
    bytes[0] = I2cDevice.CONFIG_REGISTER;
    bytes[1] = (byte) (config >> 8);
    bytes[2] = (byte) config;
    link.write(bytes, 3);
    pause.pauseNanos(conversionNanos);
    awaitConversion(config);
    bytes[0] = I2cDevice.CONVERSION_REGISTER;
    link.write(bytes, 1);
    return device.count(readRegister());
  }

  /** The register pointer still stands at the configuration. */
  private void awaitConversion(int config) {
    long start = clock.nanoTime();
    int read = readRegister();
    while (read == (config & ~I2cDevice.START_OR_IDLE)) {
      if (clock.nanoTime() - start > conversionNanos + PATIENCE_NANOS) {
        throw new SourceException(
            Reason.FAILED,
            name,
            "a conversion must end in time, and this one does not",
            "switch its power off and on");
      }
      pause.pauseNanos(POLL_NANOS);
      read = readRegister();
    }
    if (read != config) {
      countBadFrame();
      throw new SourceException(
          Reason.MALFORMED,
          name,
          String.format(
              Locale.ROOT,
              "its configuration must read %04X as it was written, and reads %04X",
              config,
              read),
          "see that it is the converter of the settings and that its supply is steady");
    }
  }

  private int readRegister() {
    link.read(bytes, 2);
    return (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF;
  }
}
