package org.boothlamp.app;

import org.boothlamp.acquisition.I2cSource;
import org.boothlamp.acquisition.IioSource;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.acquisition.SpiSource;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.I2cSourceSettings;
import org.boothlamp.settings.IioSourceSettings;
import org.boothlamp.settings.SpiSourceSettings;
import org.boothlamp.signal.PairScale;
import org.tinylog.Logger;

/** Builds the sources that read a converter on a bus of the booth's own computer. */
final class Converters {

  private Converters() {}

  static OpenSource spi(SpiSourceSettings settings, PairScale scale) {
    SpiSource source =
        SpiSource.at(
            settings.address(), settings.device(), settings.channels(), settings.pairsPerSecond());
    tryToOpen(source::open);
    return live(source, scale, settings.device().word() + " at " + settings.address().path());
  }

  static OpenSource i2c(I2cSourceSettings settings, PairScale scale) {
    I2cSource source = I2cSource.at(settings.address(), settings.device(), settings.sampling());
    tryToOpen(source::open);
    return live(
        source,
        scale,
        settings.device().word() + " at " + settings.address().path() + ", " + source.limits());
  }

  static OpenSource iio(IioSourceSettings settings, PairScale scale) {
    IioSource source =
        IioSource.at(settings.address(), settings.channels(), settings.pairsPerSecond());
    tryToOpen(source::open);
    return live(source, scale, "industrial-I/O device " + settings.address().name());
  }

  private static OpenSource live(SampleSource source, PairScale scale, String description) {
    return new OpenSource(
        source, scale, null, WallClock.SYSTEM, OpenSource.Pacing.LIVE, description);
  }

  /**
   * Now rather than in the sampler's first step, which it would hold up for the library's first
   * load. A converter that is not there yet is tried again by its reader.
   */
  private static void tryToOpen(Runnable open) {
    try {
      open.run();
    } catch (SourceException notYet) {
      Logger.info(
          "the monitor starts without samples, and the lamp in fault, until the converter is there");
    }
  }
}
