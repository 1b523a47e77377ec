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
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.settings.ArcSettings;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.JudgingSettings;
import org.boothlamp.settings.SyncSettings;
import org.boothlamp.signal.PairScale;
import org.boothlamp.sync.SyncWorker;
import org.tinylog.Logger;

/** Picks the implementations: a list of constructions. Safe to share. */
public final class Wiring implements Parts {

  private static final LocalTime DEMO_START = LocalTime.of(7, 0);

  @Override
  public RunningBooth booth(BoothSettings settings, Terminal terminal) {
    SignInDesk.requireReadable(settings);
    BoothLog log = BoothLog.open(logOf(settings));
    try {
      CalibrationHistory calibrations = log.calibrations();
      if (calibrations.records().isEmpty()) {
        // A booth that is being set up does not start with a procedure it can never judge.
        new SignInDesk(settings).nobody();
      }
      OpenSource open = Sources.open(settings);
      RefreshedLamp lamp = Lamps.open(settings.lamp(), open.frames(), terminal);
      return booth(settings, open, log, lamp, calibrations);
    } catch (RuntimeException failure) {
      log.close();
      throw failure;
    }
  }

  private RunningBooth booth(
      BoothSettings settings,
      OpenSource open,
      BoothLog log,
      RefreshedLamp lamp,
      CalibrationHistory calibrations) {
    LogQueue queue = new LogQueue();
    LogClocks clocks = new LogClocks(NanoClock.SYSTEM, open.wallClock(), ZoneId.systemDefault());
    SensorsInUse sensors = settings.sensors(open.scale(), calibrations, clocks.localNow());
    SignInDesk desk = new SignInDesk(settings, sensors.uncertainties());
    AtomicReference<BoothLogWriter> notes = new AtomicReference<>();
    List<String> refusedAtStart = new ArrayList<>();
    PipelineSettings pipeline =
        pipeline(settings, open.scale()).scaledBy(sensors.scale(), sensors.numbers());
    Monitor monitor =
        new Monitor(
            open.source(),
            lamp,
            open.pacing() == OpenSource.Pacing.LIVE ? queue : new PatientSink(queue),
            open.wallClock(),
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
            });
    notes.set(writer);
    Logger.info("booth {}: {}, log {}", settings.boothId(), open.description(), log.path());
    Booth booth =
        new Booth(
            open.source(),
            lamp,
            monitor,
            writer,
            recorder(settings, open, monitor, writer),
            open.wallClock(),
            sync(settings, log.path()));
    return settings.page() == null
        ? booth
        : booth.withPage(
            () -> Pages.of(settings, open, monitor, log.path(), recordings(settings)).server());
  }

  /** Sends rows on beside the monitor; null if the settings ask for none of it. */
  private static SyncWorker sync(BoothSettings settings, Path log) {
    SyncSettings sync = settings.sync();
    return sync == null
        ? null
        : new SyncWorker(
            log, settings.boothId(), sync.target(), sync.everySeconds(), new SplittableRandom());
  }

  /** Null if nothing is to be kept; what does not come in real time can be played again. */
  private Worker recorder(
      BoothSettings settings, OpenSource open, Monitor monitor, BoothLogWriter writer) {
    if (!settings.recordings().areKept() || open.pacing() != OpenSource.Pacing.LIVE) {
      return null;
    }
    PairRing ring = new PairRing();
    monitor.setTap(ring);
    RecordingFolder folder = recordings(settings);
    Logger.info("raw recordings of the last segments in {}", folder.path());
    return new SegmentRecorder(
        ring, folder, settings.boothId(), writer.boot(), NanoClock.SYSTEM, writer::note);
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
    return new Booth(source, lamp, monitor.get(), writer, null, source, null);
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
    return new RecordingFolder(
        settings.recordings().folder(), settings.recordings().limits(), WallClock.SYSTEM);
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
