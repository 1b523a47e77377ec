package org.boothlamp.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.IntSupplier;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.signal.ChannelScale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Calibrates one sensor: in a dialogue, or from a file of points. */
@Command(
    description = {
      "Asks for technician and reference meter, then leads through the levels, up and down again:"
          + " set the level, wait for ten steady seconds, read the meter. With --points FILE nobody is"
          + " asked: the levels are waited for, and everything else comes from options.",
      "",
      "The monitor must not run meanwhile. Every point is in the booth log before the next is asked"
          + " for: what was left, or cut off by a power cut, goes on with the same command.",
      "",
      "FILE is CSV with the header level,direction,reference and, where needed, discard_reason and"
          + " confirmed (yes lets a reference pass that looks wrong). reference may be empty if --meter"
          + " reads it.",
      "",
      "An accepted calibration is in force from the monitor's next start. Exit code 1 if it is"
          + " refused; the record is kept with all reasons."
    })
final class CalibrateSensorCommand implements Callable<Integer> {

  private static final double USUAL_PATIENCE_SECONDS = 300;

  private final Channel channel;
  private final Parts parts;
  private final Terminal terminal;
  private final WallClock clock = WallClock.SYSTEM;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private MeterOptions meterOptions;

  @Option(
      names = "--technician",
      paramLabel = "CODE",
      description = "Who does it: a code, never a name.")
  private String technician;

  @Option(
      names = "--points",
      paramLabel = "FILE",
      description = "Take these points without asking anybody.")
  private Path pointsFile;

  @Option(
      names = "--patience",
      paramLabel = "S",
      converter = NumberText.Option.class,
      description = "Longest wait for a point of the file, seconds. Default: 300.")
  private Double patienceSeconds;

  @Option(names = "--accept", description = "Accept it at the end of the file, if it may be.")
  private boolean accept;

  @Option(names = "--resume", description = "Go on with the calibration that is under way.")
  private boolean resume;

  @Option(
      names = "--abandon",
      paramLabel = "REASON",
      description = "Give up the one that is under way, and begin another.")
  private String abandonReason;

  private CalibrateSensorCommand(Channel channel, Parts parts, Terminal terminal) {
    this.channel = channel;
    this.parts = parts;
    this.terminal = terminal;
  }

  /** The command for a channel. */
  static CommandLine commandLine(Channel channel, Parts parts, Terminal terminal) {
    CommandLine line = new CommandLine(new CalibrateSensorCommand(channel, parts, terminal));
    line.setCommandName(channel.word());
    line.getCommandSpec()
        .usageMessage()
        .header("Calibrates the " + channel.word() + " sensor against a reference meter.");
    return line;
  }

  @Override
  public Integer call() {
    checkUsage();
    BoothSettings settings = settingsOption.read();
    double fullScale = fullScale(settings);
    PointsFile points = pointsFile == null ? null : points();
    ChannelScale nominal = SensorBench.nominal(parts, settings, channel);
    try (OpenBook desk = OpenBook.open(parts, settings)) {
      Conversation conversation = points == null ? new Conversation(terminal) : null;
      CalibrationRecord underWay = underWay(desk.book(), conversation);
      requireSameScale(underWay, nominal);
      try (SensorBench bench = SensorBench.open(parts, settings, channel, meterOptions)) {
        if (bench.identity() != null) {
          terminal.out().println("meter: " + bench.identity());
        }
        CalibrationUnderWay taking =
            underWay != null
                ? CalibrationUnderWay.resume(desk.book(), clock, underWay)
                : begin(desk.book(), settings, nominal, fullScale, bench, conversation);
        if (taking == null) {
          terminal.out().println("Nothing was begun.");
          return ExitCode.OK;
        }
        SteadySensor sensor = bench.sensor(channel, nominal, taking.head().fullScale());
        boolean isLive = SensorBench.isLive(settings);
        return tellOfWhatIsKept(
            taking,
            () ->
                points == null
                    ? talk(conversation, sensor, taking, isLive)
                    : runThrough(points, sensor, taking),
            bench);
      }
    }
  }

  /** Whatever ends it early, the points taken are in the book, and that is worth saying. */
  private int tellOfWhatIsKept(CalibrationUnderWay taking, IntSupplier work, SensorBench bench) {
    try {
      return work.getAsInt();
    } catch (CommandFailedException | SourceException failure) {
      if (!taking.hasEnded()) {
        terminal
            .err()
            .println(
                "calibration "
                    + taking.number()
                    + " is kept with "
                    + taking.points().size()
                    + " points: go on with --resume");
      }
      throw failure;
    } finally {
      sayRepeats(bench);
    }
  }

  private void sayRepeats(SensorBench bench) {
    if (!bench.repeats().isEmpty()) {
      terminal.out().println("meter: " + bench.repeats());
    }
  }

  private void checkUsage() {
    String wrong = meterOptions.contradiction(channel);
    if (wrong != null) {
      throw usage(wrong);
    }
    if (technician != null && !HeadQuestions.isTechnicianCode(technician)) {
      throw usage("--technician: " + HeadQuestions.TECHNICIAN_RULE + ", is \"" + technician + "\"");
    }
    if (resume && abandonReason != null) {
      throw usage("--resume goes on with it, --abandon gives it up: leave one away");
    }
    if (abandonReason != null && abandonReason.isBlank()) {
      throw usage("--abandon needs a reason, it stays in the record");
    }
    if (pointsFile == null && (accept || patienceSeconds != null)) {
      throw usage("--accept and --patience belong to --points; the dialogue asks by itself");
    }
    if (patienceSeconds != null && !(patienceSeconds > 0)) {
      throw usage("--patience must be above 0 s, is " + patienceSeconds);
    }
  }

  private ParameterException usage(String message) {
    return new ParameterException(spec.commandLine(), message);
  }

  private double fullScale(BoothSettings settings) {
    double fullScale = settings.calibration().fullScale(channel);
    if (Double.isNaN(fullScale)) {
      String key =
          channel == Channel.CURRENT ? "current_full_scale_a = 500" : "voltage_full_scale_v = 50";
      throw usage(
          settings.file()
              + " does not say how much the sensor is to measure; write for example "
              + key
              + " in [calibration]");
    }
    return fullScale;
  }

  private PointsFile points() {
    try {
      return PointsFile.read(pointsFile, meterOptions.readsMeter());
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(spec.commandLine(), refused.getMessage(), refused);
    }
  }

  /** The calibration to go on with, or null for a new one. */
  private CalibrationRecord underWay(CalibrationBook book, Conversation conversation) {
    CalibrationRecord record = book.history().underWay(channel);
    if (record == null || resume) {
      return record;
    }
    String reason = abandonReason;
    if (reason == null) {
      if (conversation == null) {
        throw usage(said(record) + ": go on with --resume, or give it up with --abandon REASON");
      }
      terminal.out().println(said(record) + ":");
      terminal.out().print(CalibrationTalk.points(record.points(), record.head()));
      if (conversation.confirms("Go on with it?")) {
        return record;
      }
      reason = conversation.ask("Why is it given up? The reason stays in the record.");
      if (reason == null || reason.isEmpty()) {
        throw new CommandFailedException(
            "without a reason it is not given up; nothing was changed");
      }
    }
    CalibrationUnderWay.resume(book, clock, record).abandon(reason);
    terminal.out().println("calibration " + record.number() + " is given up: " + reason);
    return null;
  }

  private String said(CalibrationRecord record) {
    return "calibration "
        + record.number()
        + " of the "
        + channel.word()
        + " sensor is under way since "
        + record.head().date()
        + ", by "
        + record.head().technicianCode()
        + ", with "
        + record.points().size()
        + " points";
  }

  private void requireSameScale(CalibrationRecord underWay, ChannelScale nominal) {
    if (underWay != null && !underWay.head().nominal().equals(nominal)) {
      throw new CommandFailedException(
          "calibration "
              + underWay.number()
              + " was begun with the nominal scale "
              + underWay.head().nominal()
              + ", the settings now say "
              + nominal
              + "; put the old scale back, or give it up with --abandon REASON");
    }
  }

  /** A new one; null if the person leaves before it begins. */
  private CalibrationUnderWay begin(
      CalibrationBook book,
      BoothSettings settings,
      ChannelScale nominal,
      double fullScale,
      SensorBench bench,
      Conversation conversation) {
    MeterFacts facts = MeterFacts.of(meterOptions, bench.identity());
    if (conversation != null) {
      HeadQuestions questions = new HeadQuestions(conversation, channel, facts, technician);
      if (!questions.ask()) {
        return null;
      }
      technician = questions.technician();
    }
    requireFacts(facts);
    SensorInUse inUse =
        settings.sensor(channel, nominal, book.history(), LogCalibrations.moment(clock));
    CalibrationHead head =
        new CalibrationHead(
            settings.boothId(),
            channel,
            nominal,
            fullScale,
            LocalDate.now(),
            clock.epochMillis(),
            technician,
            meter(facts),
            inUse.scale(),
            inUse.number(),
            settings.calibration().rules(channel));
    CalibrationUnderWay taking = CalibrationUnderWay.begin(book, clock, head);
    terminal
        .out()
        .println("calibration " + taking.number() + " of the " + channel.word() + " sensor");
    return taking;
  }

  private void requireFacts(MeterFacts facts) {
    List<String> missing = facts.missing();
    if (technician == null) {
      missing.add("--technician");
    }
    if (!missing.isEmpty()) {
      throw usage("without a dialogue these are needed too: " + String.join(", ", missing));
    }
  }

  private ReferenceMeter meter(MeterFacts facts) {
    try {
      return facts.meter(meterOptions);
    } catch (IllegalArgumentException impossible) {
      throw new ParameterException(spec.commandLine(), impossible.getMessage(), impossible);
    }
  }

  private int talk(
      Conversation conversation, SteadySensor sensor, CalibrationUnderWay taking, boolean isLive) {
    if (isLive) {
      conversation.meanwhile(sensor::step);
    }
    CalibrationDialogue.Ending ending =
        new CalibrationDialogue(terminal, conversation, sensor, taking).run();
    String number = "calibration " + taking.number();
    terminal
        .out()
        .println(
            switch (ending) {
              case ACCEPTED -> accepted(taking);
              case REFUSED -> number + " has ended as refused; the record is kept";
              case ABANDONED -> number + " is given up; the record is kept";
              case LEFT, CUT_OFF -> number + " is kept: the same command goes on with it";
            });
    boolean isFine =
        ending != CalibrationDialogue.Ending.REFUSED
            && ending != CalibrationDialogue.Ending.CUT_OFF;
    return isFine ? ExitCode.OK : ExitCode.SOFTWARE;
  }

  private int runThrough(PointsFile points, SteadySensor sensor, CalibrationUnderWay taking) {
    double patience = patienceSeconds == null ? USUAL_PATIENCE_SECONDS : patienceSeconds;
    PointsRun run = new PointsRun(terminal, sensor, taking, points, patience);
    String contradiction = run.contradiction();
    if (contradiction != null) {
      throw usage(
          pointsFile
              + ": "
              + contradiction
              + "; put the file back as it was, or begin again with --abandon REASON");
    }
    run.run();
    CalibrationOutcome outcome = taking.evaluate();
    terminal.out().print(CalibrationTalk.summary(outcome));
    if (!outcome.verdict().isAccepted()) {
      taking.finish(outcome);
      throw new CommandFailedException(
          "calibration "
              + taking.number()
              + " is refused, for what stands above; the record is kept");
    }
    if (!accept) {
      terminal
          .out()
          .println(
              "calibration "
                  + taking.number()
                  + " can be accepted and is kept under way: the same command with --resume --accept"
                  + " accepts it");
      return ExitCode.OK;
    }
    taking.finish(outcome);
    terminal.out().println(accepted(taking));
    return ExitCode.OK;
  }

  private static String accepted(CalibrationUnderWay taking) {
    return "calibration "
        + taking.number()
        + " is accepted; the booth measures by it from the monitor's next start";
  }
}
