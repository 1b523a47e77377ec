package org.boothlamp.cli;

import java.time.LocalDate;
import org.boothlamp.calibration.Channel;
import picocli.CommandLine.Option;

/** Options that say what the sensor is held against. What is not given is null. */
final class MeterOptions {

  /** Baud rate that most bench meters are set to when they are new; common practice, no source. */
  private static final String USUAL_BAUD = "9600";

  @Option(
      names = "--meter-make",
      paramLabel = "TEXT",
      description = "Maker and model of the reference meter, free text.")
  String make;

  @Option(names = "--meter-serial", paramLabel = "TEXT", description = "Its serial number.")
  String serial;

  @Option(
      names = "--certificate",
      paramLabel = "TEXT",
      description = "Number of its calibration certificate.")
  String certificate;

  @Option(
      names = "--certificate-date",
      paramLabel = "YYYY-MM-DD",
      description = "Day of that certificate.")
  LocalDate certificateDate;

  @Option(
      names = "--accuracy-percent",
      paramLabel = "P",
      converter = NumberText.Option.class,
      description = "Accuracy by its data sheet: %% of the reading, a shunt or clamp included.")
  Double accuracyPercent;

  @Option(
      names = "--accuracy-counts",
      paramLabel = "N",
      converter = NumberText.Option.class,
      description = "and steps of its last digit.")
  Double accuracyCounts;

  @Option(
      names = "--resolution",
      paramLabel = "X",
      converter = NumberText.Option.class,
      description = "One step of its last digit, in the unit that it shows.")
  Double resolution;

  @Option(
      names = "--meter",
      paramLabel = "PORT",
      description = "Read the meter by itself: SCPI over this serial port.")
  String port;

  @Option(
      names = "--meter-baud",
      paramLabel = "N",
      defaultValue = USUAL_BAUD,
      description = "Line speed of that port. Default: ${DEFAULT-VALUE}.")
  int baud;

  @Option(
      names = "--meter-init",
      paramLabel = "COMMAND",
      description = "Sent once at first, for meters that want SYST:REM before they listen.")
  String init;

  @Option(
      names = "--meter-query",
      paramLabel = "QUERY",
      description = {
        "What a reading is asked with, such as READ?. Default: MEAS:CURR:DC? or MEAS:VOLT:DC?,"
            + " by what the meter has to show."
      })
  String query;

  @Option(
      names = "--meter-scale",
      paramLabel = "A_PER_V",
      converter = NumberText.Option.class,
      description = "Amps for each volt it shows, if it reads a shunt or a clamp.")
  Double ampsPerVolt;

  @Option(
      names = "--meter-scale-percent",
      paramLabel = "P",
      converter = NumberText.Option.class,
      description = "How far that shunt or clamp may be off, %% of the reading; is added.")
  Double scalePercent;

  boolean readsMeter() {
    return port != null;
  }

  /** Amps or volts for each unit the meter shows. */
  double unitsPerReading() {
    return ampsPerVolt == null ? 1 : ampsPerVolt;
  }

  /** The query that was given, or the one that suits. */
  String query(Channel channel) {
    if (query != null) {
      return query;
    }
    return channel == Channel.CURRENT && ampsPerVolt == null ? "MEAS:CURR:DC?" : "MEAS:VOLT:DC?";
  }

  /** Why these cannot be meant together, or null. */
  String contradiction(Channel channel) {
    if (ampsPerVolt != null && channel == Channel.VOLTAGE) {
      return "--meter-scale is amps for each volt and belongs to calibrate current; leave it away";
    }
    if (ampsPerVolt != null && ampsPerVolt == 0) {
      return "--meter-scale must not be 0; copy it from the shunt or clamp";
    }
    if (ampsPerVolt != null && scalePercent == null) {
      return "--meter-scale needs --meter-scale-percent: a shunt or clamp has its own uncertainty";
    }
    return scalePercent != null && ampsPerVolt == null
        ? "--meter-scale-percent belongs to --meter-scale; give that too"
        : null;
  }
}
