package org.boothlamp.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.boothlamp.acquisition.SimulatedRunListener;
import org.boothlamp.acquisition.SimulatedSensor;
import org.boothlamp.acquisition.SimulatedSource;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.boothlog.SignIn;
import org.boothlamp.cli.DemoScenario;
import org.boothlamp.cli.Parts;
import org.boothlamp.cli.RunningBooth;
import org.boothlamp.cli.Terminal;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.lamp.LampPattern;
import org.boothlamp.lamp.RedStyle;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.BoothClock;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.ClockTrust;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.settings.ArcSettings;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.JudgingSettings;
import org.boothlamp.signal.PairScale;
import org.tinylog.Logger;

/** Picks the implementations: a list of constructions. Safe to share. */
public final class Wiring implements Parts {

  private static final LocalTime DEMO_START = LocalTime.of(7, 0);

  @Override
  public RunningBooth booth(BoothSettings settings, Terminal terminal) {
    SignInDesk desk = new SignInDesk(settings);
    Assignment first = desk.nobody();
    BoothLog log = BoothLog.openPatiently(settings.logFolder().resolve(BoothLog.FILE_NAME));
    try {
      OpenSource open = Sources.open(settings);
      RefreshedLamp lamp = Lamps.open(settings.lamp(), open.frames(), terminal);
      return booth(settings, open, log, lamp, first, desk);
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
      Assignment first,
      SignInDesk desk) {
    LogQueue queue = new LogQueue();
    LogClocks clocks = clocks(settings, open);
    Monitor monitor =
        new Monitor(
            open.source(),
            lamp,
            open.pacing() == OpenSource.Pacing.LIVE ? queue : new PatientSink(queue),
            clocks.wall(),
            pipeline(settings, open.scale()),
            first);
    AtomicReference<BoothLogWriter> notes = new AtomicReference<>();
    Consumer<SignIn> onSignIn =
        signIn -> {
          monitor.assign(desk.after(signIn, why -> refuse(notes.get(), signIn, why)));
          Logger.info("{} signed in", signIn.isSignOut() ? "nobody" : signIn.trainee());
        };
    BoothLogWriter writer = new BoothLogWriter(log, settings.boothId(), queue, clocks, onSignIn);
    notes.set(writer);
    Logger.info("booth {}: {}, log {}", settings.boothId(), open.description(), log.path());
    return new Booth(open.source(), lamp, monitor, writer, clocks.wall());
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

  private static void refuse(BoothLogWriter writer, SignIn signIn, String why) {
    Logger.warn("{} signed in, but nothing can be judged: {}", signIn.trainee(), why);
    writer.note(EventKind.SIGN_IN_REFUSED, signIn.trainee() + ": " + why);
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
    return new Booth(source, lamp, monitor.get(), writer, source);
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
}
