package org.boothlamp.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.boothlamp.acquisition.PairRing;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.acquisition.ScpiMeter;
import org.boothlamp.acquisition.SegmentRecorder;
import org.boothlamp.acquisition.SerialLine;
import org.boothlamp.acquisition.SimulatedRunListener;
import org.boothlamp.acquisition.SimulatedSensor;
import org.boothlamp.acquisition.SimulatedSource;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.boothlog.SentRows;
import org.boothlamp.boothlog.SignIn;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.cli.DemoScenario;
import org.boothlamp.cli.Parts;
import org.boothlamp.cli.RunningBooth;
import org.boothlamp.cli.Terminal;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.lamp.LampPattern;
import org.boothlamp.lamp.RedStyle;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.lamp.RefusalLamp;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.BoothClock;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.ClockTrust;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.RoomMaker;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.settings.ArcSettings;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.JudgingSettings;
import org.boothlamp.settings.SyncSettings;
import org.boothlamp.signal.PairScale;
import org.boothlamp.sync.SyncMarks;
import org.boothlamp.sync.SyncWorker;
import org.tinylog.Logger;

/** Picks the implementations: a list of constructions. Safe to share. */
public final class Wiring implements Parts {

  private static final LocalTime DEMO_START = LocalTime.of(7, 0);

  @Override
  public RunningBooth booth(BoothSettings settings, Terminal terminal) {
    SignInDesk.requireReadable(settings);
    BoothBadges.requireReadable(settings);
    BoothLog log = BoothLog.openPatiently(logOf(settings));
    try {
      CalibrationHistory calibrations = calibrations(settings, log);
      OpenSource open = Sources.open(settings);
      RefreshedLamp lamp = Lamps.open(settings.lamp(), open.frames(), terminal);
      return booth(settings, open, log, lamp, calibrations);
    } catch (RuntimeException failure) {
      log.close();
      throw failure;
    }
  }

  /** Those that cannot be read at the start are taken up as soon as they can. */
  private static CalibrationHistory calibrations(BoothSettings settings, BoothLog log) {
    CalibrationHistory calibrations = log.calibrationsIfReadable();
    if (calibrations == null) {
      return CalibrationHistory.NONE;
    }
    if (calibrations.records().isEmpty()) {
      // A booth that is being set up does not start with a procedure it can never judge.
      new SignInDesk(settings).nobody();
    }
    return calibrations;
  }

  private RunningBooth booth(
      BoothSettings settings,
      OpenSource open,
      BoothLog log,
      RefreshedLamp lamp,
      CalibrationHistory calibrations) {
    LogQueue queue = new LogQueue();
    LogClocks clocks = clocks(settings, open);
    SensorsInUse sensors = settings.sensors(open.scale(), calibrations, clocks.localNow());
    SignInDesk desk = new SignInDesk(settings, sensors.uncertainties());
    AtomicReference<BoothLogWriter> notes = new AtomicReference<>();
    List<String> refusedAtStart = new ArrayList<>();
    PipelineSettings pipeline =
        pipeline(settings, open.scale()).scaledBy(sensors.scale(), sensors.numbers());
    RefusalLamp shown = new RefusalLamp(lamp, NanoClock.SYSTEM);
    Monitor monitor =
        new Monitor(
            open.source(),
            shown,
            open.pacing() == OpenSource.Pacing.LIVE ? queue : new PatientSink(queue),
            clocks.wall(),
            pipeline,
            desk.nobody(refusedAtStart::add));
    Consumer<SignIn> onSignIn =
        signIn -> {
          monitor.assign(desk.after(signIn, why -> refuse(notes.get(), signIn.trainee(), why)));
          Logger.info("{} signed in", signIn.isSignOut() ? "nobody" : signIn.trainee());
        };
    CalibrationDesk calibrationDesk =
        new CalibrationDesk(
            sensors,
            history -> settings.sensors(open.scale(), history, clocks.localNow()),
            now -> measureBy(monitor, pipeline, now, desk, notes.get()),
            (kind, detail) -> tell(notes.get(), kind, detail));
    RecordingFolder recordings =
        areKept(settings, open) ? recordings(settings, clocks.wall()) : null;
    BoothLogWriter writer =
        new BoothLogWriter(
            log,
            settings.boothId(),
            queue,
            clocks,
            onSignIn,
            history -> {
              calibrationDesk.follow(history);
              refusedAtStart.forEach(why -> refuse(notes.get(), "", why));
              refusedAtStart.clear();
            },
            recordings == null ? RoomMaker.NONE : recordings);
    writer.keepFor(settings.retention(), sentRows(settings, log.path()));
    notes.set(writer);
    Logger.info("booth {}: {}, log {}", settings.boothId(), open.description(), log.path());
    Booth booth =
        new Booth(
            open.source(),
            lamp,
            monitor,
            writer,
            recordings == null ? null : recorder(settings, recordings, monitor, writer),
            clocks.wall(),
            sync(settings, log.path()),
            BoothBadges.desk(settings, monitor, shown, writer));
    return settings.page() == null
        ? booth
        : booth.withPage(
            () ->
                Pages.of(settings, open, clocks.wall(), monitor, log.path(), recordings(settings))
                    .server());
  }

  /** A source that runs faster than life brings its own time of day along, which is right. */
  private static LogClocks clocks(BoothSettings settings, OpenSource open) {
    if (open.pacing() == OpenSource.Pacing.PATIENT) {
      return new LogClocks(NanoClock.SYSTEM, open.wallClock(), ZoneId.systemDefault());
    }
    return LogClocks.keeping(
        new BoothClock(NanoClock.SYSTEM, open.wallClock()),
        settings.clockHasBattery() ? ClockTrust.ALWAYS : new KernelClock());
  }

  private static SentRows sentRows(BoothSettings settings, Path log) {
    return settings.sync() == null
        ? SentRows.NOT_SENT_ON
        : new SyncMarks(log, settings.sync().target());
  }

  /** Sends rows on beside the monitor; null if the settings ask for none of it. */
  private static SyncWorker sync(BoothSettings settings, Path log) {
    SyncSettings sync = settings.sync();
    return sync == null
        ? null
        : new SyncWorker(
            log, settings.boothId(), sync.target(), sync.everySeconds(), new SplittableRandom());
  }

  /** What does not come in real time can be played again: no recording of it is kept. */
  private static boolean areKept(BoothSettings settings, OpenSource open) {
    return settings.recordings().areKept() && open.pacing() == OpenSource.Pacing.LIVE;
  }

  private static Worker recorder(
      BoothSettings settings, RecordingFolder folder, Monitor monitor, BoothLogWriter writer) {
    PairRing ring = new PairRing();
    monitor.setTap(ring);
    Logger.info("raw recordings of the last segments in {}", folder.path());
    return new SegmentRecorder(
        ring, folder, settings.boothId(), BoothLog.machineBoot(), NanoClock.SYSTEM, writer::note);
  }

  private static void measureBy(
      Monitor monitor,
      PipelineSettings pipeline,
      SensorsInUse sensors,
      SignInDesk desk,
      BoothLogWriter notes) {
    String who = monitor.assigned().trainee();
    monitor.measureBy(
        pipeline.scaledBy(sensors.scale(), sensors.numbers()),
        desk.measuredBy(sensors.uncertainties(), why -> refuse(notes, who, why)));
  }

  private static void tell(BoothLogWriter writer, EventKind kind, String detail) {
    Logger.info("{}: {}", kind.word(), detail);
    writer.note(kind, detail);
  }

  private static void refuse(BoothLogWriter writer, String trainee, String why) {
    String who = trainee.isEmpty() ? "nobody signed in" : trainee;
    Logger.warn("{}, but nothing can be judged: {}", who, why);
    writer.note(EventKind.SIGN_IN_REFUSED, who + ": " + why);
  }

  private static Path logOf(BoothSettings settings) {
    return settings.logFolder().resolve(BoothLog.FILE_NAME);
  }

  @Override
  public CalibrationBook calibrationBook(BoothSettings settings) {
    return BoothCalibrations.open(logOf(settings));
  }

  @Override
  public RunningBooth demo(DemoScenario scenario, Path logFile, double speed) {
    AtomicReference<Monitor> monitor = new AtomicReference<>();
    SimulatedRunListener onRun =
        (index, run) -> monitor.get().assign(scenario.assignments().get(index));
    SimulatedSource simulated =
        new SimulatedSource(
            scenario.booth(), SimulatedSensor.of(scenario.scale()), speed, NanoClock.SYSTEM, onRun);
    SourceTime source = new SourceTime(simulated, demoStartMillis());
    BoothLog log = BoothLog.open(logFile);
    LogQueue queue = new LogQueue();
    RefreshedLamp lamp =
        new RefreshedLamp(List.of(), new LampPattern(RedStyle.STEADY), NanoClock.SYSTEM);
    PipelineSettings pipeline =
        new PipelineSettings(scenario.scale(), ArcRule.STANDARD, JudgingRule.STANDARD);
    BoothLogSink sink = new PatientSink(queue);
    monitor.set(new Monitor(source, lamp, sink, source, pipeline, Assignment.NONE));
    LogClocks clocks = new LogClocks(NanoClock.SYSTEM, source, ZoneId.systemDefault());
    BoothLogWriter writer =
        new BoothLogWriter(log, DemoScenario.BOOTH_ID, queue, clocks, signIn -> {});
    return new Booth(source, lamp, monitor.get(), writer, null, source, null, null);
  }

  /** The shift of the demo begins this morning. */
  private static long demoStartMillis() {
    ZoneId zone = ZoneId.systemDefault();
    return LocalDate.now(zone).atTime(DEMO_START).atZone(zone).toInstant().toEpochMilli();
  }

  @Override
  public SampleSource source(BoothSettings settings) {
    return Sources.open(settings).source();
  }

  @Override
  public Recording recordable(BoothSettings settings) {
    OpenSource open = Sources.open(settings);
    return new Recording(open.source(), open.scale());
  }

  @Override
  public RecordingFolder recordings(BoothSettings settings) {
    return recordings(settings, WallClock.SYSTEM);
  }

  private static RecordingFolder recordings(BoothSettings settings, WallClock wallClock) {
    return new RecordingFolder(
        settings.recordings().folder(), settings.recordings().limits(), wallClock);
  }

  @Override
  public Recording recording(Path wav) {
    return Sources.recording(wav);
  }

  @Override
  public Lamp lamp(BoothSettings settings, Terminal terminal) {
    return Sources.lampAlone(settings, terminal);
  }

  @Override
  public PipelineSettings pipeline(BoothSettings settings, PairScale scale) {
    ArcSettings arc = settings.arc();
    JudgingSettings judging = settings.judging();
    return new PipelineSettings(
        scale,
        ArcRule.ofSeconds(
            arc.arcOnAmps(),
            arc.confirmSeconds(),
            arc.bridgeSeconds(),
            arc.minSegmentSeconds(),
            arc.shortCircuitVolts()),
        JudgingRule.ofSeconds(
            judging.averageSeconds(),
            judging.settleSeconds(),
            judging.holdSeconds(),
            judging.excursionSeconds()));
  }

  @Override
  public ScpiMeter meter(String port, int baud) {
    SerialLine line = new SerialLine(port, baud);
    line.open();
    return new ScpiMeter(line, port);
  }
}
