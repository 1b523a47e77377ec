package org.boothlamp.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.ControlChart;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.ReferenceDoubt;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.calibration.WindowFigures;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.ControlChartText;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.signal.ChannelScale;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A quick look at one point between two calibrations. */
@Command(
    name = "check",
    header = "Checks a sensor at one point, and notes it.",
    description = {
      "Set a level and leave it. Ten steady seconds of the booth's reading are held against the"
          + " reference, and the difference against a limit: U of the reading, and what the meter itself"
          + " may be off if its accuracy is given. Every check is kept, and stands on the sensor's control chart.",
      "",
      "Exit code 1 if it is not passed. The monitor must not run meanwhile.",
      "",
      "Example:",
      "  boothlamp calibrate check current --reference 100.4 --technician K-2"
    })
final class CalibrateCheckCommand implements Callable<Integer> {

  private final Parts parts;
  private final Terminal terminal;
  private final WallClock clock = WallClock.SYSTEM;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private MeterOptions meterOptions;

  @Parameters(index = "0", paramLabel = "current|voltage", description = "Which sensor.")
  private Channel channel;

  @Option(
      names = "--reference",
      paramLabel = "X",
      converter = NumberText.Option.class,
      description = "What the reference meter shows, in A or V. Not with --meter.")
  private Double reference;

  @Option(
      names = "--technician",
      paramLabel = "CODE",
      required = true,
      description = "Who does it: a code, never a name.")
  private String technician;

  @Option(
      names = "--patience",
      paramLabel = "S",
      defaultValue = "120",
      converter = NumberText.Option.class,
      description = "Longest wait for ten steady seconds. Default: ${DEFAULT-VALUE} s.")
  private double patienceSeconds;

  @Option(
      names = "--confirmed",
      description = "The reference looks wrong and is right all the same.")
  private boolean confirmed;

  CalibrateCheckCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    checkUsage();
    BoothSettings settings = settingsOption.read();
    ChannelScale nominal = SensorBench.nominal(parts, settings, channel);
    try (OpenBook desk = OpenBook.open(parts, settings);
        SensorBench bench = SensorBench.open(parts, settings, channel, meterOptions)) {
      CalibrationBook book = desk.book();
      CalibrationCheck check = check(settings, nominal, book, bench);
      book.addCheck(check);
      terminal.out().print(said(check, book.checks(channel)));
      return check.isPassed() ? ExitCode.OK : ExitCode.SOFTWARE;
    }
  }

  private void checkUsage() {
    String wrong = meterOptions.contradiction(channel);
    if (wrong == null && reference == null == (meterOptions.port == null)) {
      wrong =
          "give what the meter shows with --reference X, or let --meter PORT read it: one of both";
    }
    if (wrong == null && !HeadQuestions.isTechnicianCode(technician)) {
      wrong = "--technician: " + HeadQuestions.TECHNICIAN_RULE + ", is \"" + technician + "\"";
    }
    if (wrong == null && !(patienceSeconds > 0)) {
      wrong = "--patience must be above 0 s, is " + patienceSeconds;
    }
    if (wrong != null) {
      throw new ParameterException(spec.commandLine(), wrong);
    }
  }

  private CalibrationCheck check(
      BoothSettings settings, ChannelScale nominal, CalibrationBook book, SensorBench bench) {
    SensorInUse inUse =
        settings.sensor(channel, nominal, book.history(), LogCalibrations.moment(clock));
    ChannelScale scale = inUse.scale();
    WindowFigures figures = await(bench.sensor(channel, nominal, fullScale(settings, nominal)));
    double reading = scale.toUnits(figures.mean());
    double truth = reference == null ? figures.reference().mean() : reference;
    refuseDoubtful(truth, reading, fullScale(settings, nominal));
    return new CalibrationCheck(
        channel,
        inUse.number(),
        clock.epochMillis(),
        technician,
        meterName(bench),
        truth,
        reading,
        Math.abs(scale.unitsPerCount()) * figures.standardDeviation(),
        figures.readings(),
        inUse.uncertainty().at(reading) + meterLimit(truth));
  }

  /** Without a full scale in the settings: what a 12-bit converter reaches by the scale. */
  private double fullScale(BoothSettings settings, ChannelScale nominal) {
    double fullScale = settings.calibration().fullScale(channel);
    return Double.isNaN(fullScale) ? 2048 * Math.abs(nominal.unitsPerCount()) : fullScale;
  }

  private WindowFigures await(SteadySensor sensor) {
    WaitLine line = new WaitLine(terminal, sensor);
    WindowFigures figures = sensor.figures();
    while (!sensor.isReady(figures)) {
      sensor.step();
      line.show();
      figures = sensor.figures();
      if (line.seconds() > patienceSeconds) {
        throw new CommandFailedException(
            "no ten steady seconds within --patience, "
                + Wording.number(patienceSeconds)
                + " s: "
                + line.reason());
      }
    }
    line.end();
    return figures;
  }

  private void refuseDoubtful(double truth, double reading, double fullScale) {
    String question = ReferenceDoubt.question(channel, truth, reading, fullScale);
    if (question != null && !confirmed) {
      throw new CommandFailedException(
          question + "; correct --reference, or say --confirmed. Nothing was noted");
    }
  }

  private String meterName(SensorBench bench) {
    String make = meterOptions.make != null ? meterOptions.make : bench.identity();
    String serial = meterOptions.serial == null ? "" : " " + meterOptions.serial;
    return (make == null ? "" : make + serial).strip();
  }

  /** What the meter may be off; 0 as far as it is not given. */
  private double meterLimit(double truth) {
    double scale = Math.abs(meterOptions.unitsPerReading());
    double step = scale * orNothing(meterOptions.resolution);
    return (orNothing(meterOptions.accuracyPercent) + orNothing(meterOptions.scalePercent))
            / 100
            * Math.abs(truth)
        + orNothing(meterOptions.accuracyCounts) * step
        + step / 2;
  }

  private static double orNothing(Double option) {
    return option == null ? 0 : option;
  }

  /** This check in a sentence, then all of them on the sensor's control chart. */
  private String said(CalibrationCheck check, List<CalibrationCheck> all) {
    String chart =
        ControlChartText.render(
            ControlChart.of(all), ZoneId.systemDefault(), terminal.width(), terminal.colour());
    return line(check) + "\n\n" + chart;
  }

  private String line(CalibrationCheck check) {
    String unit = channel.unit();
    return Instant.ofEpochMilli(check.wallMillis()).atZone(ZoneId.systemDefault()).toLocalDate()
        + "  "
        + (check.isPassed() ? "passed" : "FAILED")
        + "  booth "
        + CalibrationTalk.amount(check.reading(), unit)
        + ", reference "
        + CalibrationTalk.amount(check.reference(), unit)
        + ", error "
        + CalibrationTalk.amount(check.error(), unit)
        + ", limit "
        + MeasuredValue.uncertainty(check.limit())
        + " "
        + unit
        + (check.calibrationNumber() == 0
            ? ", not calibrated"
            : ", calibration " + check.calibrationNumber());
  }
}
