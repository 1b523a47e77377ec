package org.boothlamp.cli;

import org.boothlamp.acquisition.MeterPoller;
import org.boothlamp.acquisition.ScpiMeter;
import org.boothlamp.calibration.Channel;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WorkerThread;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.Pace;
import org.boothlamp.settings.RecordingSourceSettings;
import org.boothlamp.settings.SimulatedSourceSettings;
import org.boothlamp.signal.ChannelScale;
import org.tinylog.Logger;

/**
 * A booth's source and, if one is on a line, the reference meter, opened for one command. Confined
 * to one thread.
 */
final class SensorBench implements AutoCloseable {

  private final SampleSource source;
  private final MeterPoller poller;
  private final WorkerThread meterThread;
  private final String identity;

  private SensorBench(SampleSource source, MeterPoller poller, String identity) {
    this.source = source;
    this.poller = poller;
    this.identity = identity;
    meterThread = poller == null ? null : new WorkerThread(poller, SensorBench::report);
  }

  private static void report(Throwable thrown) {
    Logger.error(thrown, "the meter is not read any more");
  }

  /** Opens both; the meter has said who it is, and is read from now on. */
  static SensorBench open(
      Parts parts, BoothSettings settings, Channel channel, MeterOptions options) {
    MeterPoller poller = null;
    String identity = null;
    if (options.readsMeter()) {
      ScpiMeter meter = parts.meter(options.port, options.baud);
      identity = greet(meter, options);
      poller = new MeterPoller(meter, options.query(channel), options.unitsPerReading());
    }
    SensorBench bench = new SensorBench(source(parts, settings, poller), poller, identity);
    if (poller != null) {
      bench.meterThread.start();
    }
    return bench;
  }

  private static String greet(ScpiMeter meter, MeterOptions options) {
    try {
      if (options.init != null) {
        meter.tell(options.init);
      }
      return meter.identity();
    } catch (RuntimeException failure) {
      meter.close();
      throw failure;
    }
  }

  private static SampleSource source(Parts parts, BoothSettings settings, MeterPoller poller) {
    try {
      return parts.source(settings);
    } catch (RuntimeException failure) {
      if (poller != null) {
        poller.close();
      }
      throw failure;
    }
  }

  /** The nominal scale of a channel: the settings', or what a recording brings along. */
  static ChannelScale nominal(Parts parts, BoothSettings settings, Channel channel) {
    if (settings.source() instanceof RecordingSourceSettings recording) {
      Parts.Recording opened = parts.recording(recording.file());
      opened.source().close();
      return channel.of(opened.scale());
    }
    return channel.of(settings.scale());
  }

  /** True if samples come whether anybody reads them or not. */
  static boolean isLive(BoothSettings settings) {
    if (settings.source() instanceof RecordingSourceSettings recording) {
      return recording.pace() == Pace.REAL_TIME;
    }
    return !(settings.source() instanceof SimulatedSourceSettings simulated)
        || simulated.pace() == Pace.REAL_TIME;
  }

  /** The sensor of a channel. */
  SteadySensor sensor(Channel channel, ChannelScale nominal, double fullScale) {
    return new SteadySensor(source, poller, channel, nominal, fullScale);
  }

  /** What the meter says of itself; null if none is on a line. */
  String identity() {
    return identity;
  }

  /** How many answers of the meter were asked for again, for people; empty if none. */
  String repeats() {
    return poller == null ? "" : poller.repeats();
  }

  @Override
  public void close() {
    try {
      if (meterThread != null) {
        meterThread.close();
      }
    } finally {
      source.close();
    }
  }
}
