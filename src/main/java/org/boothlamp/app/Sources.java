package org.boothlamp.app;

import java.nio.file.Path;
import org.boothlamp.acquisition.Pause;
import org.boothlamp.acquisition.Recording;
import org.boothlamp.acquisition.RecordingSource;
import org.boothlamp.acquisition.SerialLine;
import org.boothlamp.acquisition.SerialSource;
import org.boothlamp.acquisition.SimulatedSettings;
import org.boothlamp.acquisition.SimulatedSource;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.cli.Parts;
import org.boothlamp.cli.Terminal;
import org.boothlamp.judging.Signal;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.I2cSourceSettings;
import org.boothlamp.settings.IioSourceSettings;
import org.boothlamp.settings.LampKind;
import org.boothlamp.settings.Pace;
import org.boothlamp.settings.RecordingSourceSettings;
import org.boothlamp.settings.SerialSourceSettings;
import org.boothlamp.settings.SimulatedSourceSettings;
import org.boothlamp.settings.SourceSettings;
import org.boothlamp.settings.SpiSourceSettings;
import org.boothlamp.signal.PairScale;
import org.tinylog.Logger;

/** Builds the source that the settings describe. */
final class Sources {

  private Sources() {}

  static OpenSource open(BoothSettings settings) {
    SourceSettings source = settings.source();
    if (source instanceof SerialSourceSettings serial) {
      return serial(serial, settings.scale());
    }
    if (source instanceof SpiSourceSettings spi) {
      return Converters.spi(spi, settings.scale());
    }
    if (source instanceof I2cSourceSettings i2c) {
      return Converters.i2c(i2c, settings.scale());
    }
    if (source instanceof IioSourceSettings iio) {
      return Converters.iio(iio, settings.scale());
    }
    if (source instanceof RecordingSourceSettings recording) {
      return recording(recording);
    }
    return simulated((SimulatedSourceSettings) source, settings.scale());
  }

  private static OpenSource serial(SerialSourceSettings settings, PairScale scale) {
    SerialLine line = new SerialLine(settings.port(), settings.baud());
    tryToOpen(line);
    return new OpenSource(
        new LineSource(new SerialSource(line, NanoClock.SYSTEM), line),
        scale,
        new BoardLamp(line),
        WallClock.SYSTEM,
        OpenSource.Pacing.LIVE,
        "serial front end at " + settings.port() + ", " + settings.baud() + " baud");
  }

  /**
   * Now rather than in the sampler's first step, which it would hold up for the library's first
   * load. A booth is switched on in any order: a line that is not there yet is tried again by its
   * reader.
   */
  private static void tryToOpen(SerialLine line) {
    try {
      line.open();
    } catch (SourceException notYet) {
      Logger.info(
          "the monitor starts without samples, and the lamp in fault, until the line is there");
    }
  }

  private static OpenSource recording(RecordingSourceSettings settings) {
    Recording recording = Recording.open(settings.file());
    SampleSource source =
        settings.pace() == Pace.REAL_TIME
            ? RecordingSource.inRealTime(recording, NanoClock.SYSTEM, Pause.SYSTEM)
            : RecordingSource.atFullSpeed(recording);
    return paced(source, recording.scale(), settings.pace(), "recording " + settings.file());
  }

  private static OpenSource simulated(SimulatedSourceSettings settings, PairScale scale) {
    SimulatedSettings typical = SimulatedSettings.TYPICAL;
    SimulatedSettings simulated =
        new SimulatedSettings(
            settings.process(),
            settings.pairsPerSecond(),
            settings.seed(),
            settings.pace() == Pace.REAL_TIME ? 1 : 0,
            typical.skill(),
            typical.pauseSeconds(),
            typical.arcSeconds());
    return paced(
        SimulatedSource.endless(simulated, scale, NanoClock.SYSTEM),
        scale,
        settings.pace(),
        "simulated booth, " + settings.process());
  }

  private static OpenSource paced(
      SampleSource source, PairScale scale, Pace pace, String description) {
    if (pace == Pace.REAL_TIME) {
      return new OpenSource(
          source, scale, null, WallClock.SYSTEM, OpenSource.Pacing.LIVE, description);
    }
    SourceTime timed = new SourceTime(source, System.currentTimeMillis());
    return new OpenSource(timed, scale, null, timed, OpenSource.Pacing.PATIENT, description);
  }

  /** A recording, as fast as it can be read. */
  static Parts.Recording recording(Path wav) {
    Recording recording = Recording.open(wav);
    return new Parts.Recording(RecordingSource.atFullSpeed(recording), recording.scale());
  }

  /** The lamp of the settings without a source, started; a serial line is opened for it alone. */
  static Lamp lampAlone(BoothSettings settings, Terminal terminal) {
    if (!settings.lamp().outputs().contains(LampKind.SERIAL)) {
      RefreshedLamp lamp = Lamps.open(settings.lamp(), null, terminal);
      lamp.start();
      return lamp;
    }
    SerialSourceSettings serial = (SerialSourceSettings) settings.source();
    SerialLine line = new SerialLine(serial.port(), serial.baud());
    line.open();
    RefreshedLamp lamp = Lamps.open(settings.lamp(), new BoardLamp(line), terminal);
    lamp.start();
    return new LampOnLine(lamp, line);
  }

  /** A lamp that owns the line behind it. */
  private record LampOnLine(Lamp lamp, SerialLine line) implements Lamp {

    @Override
    public void show(Signal signal, long monotonicNanos) {
      lamp.show(signal, monotonicNanos);
    }

    @Override
    public void close() {
      lamp.close();
      line.close();
    }
  }
}
