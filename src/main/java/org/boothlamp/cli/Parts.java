package org.boothlamp.cli;

import java.nio.file.Path;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.acquisition.ScpiMeter;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.signal.PairScale;

/**
 * What commands have built for them. Commands know what they want; only the wiring knows which
 * implementation that is.
 */
public interface Parts {

  /** A recording and the scale it brings along. */
  record Recording(SampleSource source, PairScale scale) {}

  /** The booth that the settings describe, not started; its log is open. */
  RunningBooth booth(BoothSettings settings, Terminal terminal);

  /**
   * A booth that plays a scenario, not started; its log is open.
   *
   * @param log file of its booth log
   * @param speed times faster than life
   */
  RunningBooth demo(DemoScenario scenario, Path log, double speed);

  /** The source that the settings describe, alone. */
  SampleSource source(BoothSettings settings);

  /** The source that the settings describe, with the scale of its counts. */
  Recording recordable(BoothSettings settings);

  /** The folder of the raw recordings of the last segments. */
  RecordingFolder recordings(BoothSettings settings);

  /** A recording, as fast as it can be read. */
  Recording recording(Path wav);

  /** The lamp that the settings describe, alone and started. */
  Lamp lamp(BoothSettings settings, Terminal terminal);

  /**
   * The calibrations of the booth that the settings describe, in its log; makes the log if there is
   * none. Whoever gets it closes it.
   */
  CalibrationBook calibrationBook(BoothSettings settings);

  /** The numbers of the path from counts to lamp that the settings describe. */
  PipelineSettings pipeline(BoothSettings settings, PairScale scale);

  /** A reference meter on a serial port, open and not asked yet; closed by who asked for it. */
  ScpiMeter meter(String port, int baud);
}
