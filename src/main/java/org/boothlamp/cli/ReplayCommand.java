package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.report.Replay;
import org.boothlamp.report.ReplayJson;
import org.boothlamp.report.ReplayText;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.settings.ProcedureFile;
import org.boothlamp.settings.Procedures;
import org.boothlamp.signal.PairScale;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plays a logged run again, or sends a recording through the monitor. */
@Command(
    name = "replay",
    header = "Plays a run of the booth log again, or sends a recording through the monitor.",
    customSynopsis = {
      "boothlamp replay --segment ID [--beside ID] [--speed X | --step]",
      "       boothlamp replay --segment ID [--zoom FROM..TO] [--sound NAME.wav]",
      "       boothlamp replay NAME.wav [--procedure FILE] [--pass NAME]"
    },
    description = {
      "With --segment a run of the booth log is played again: amps, volts, the lamp and what happens, alone"
          + " or beside another run. On a terminal it moves at the speed asked for; into a file or a pipe it"
          + " goes as lines; --format json gives 20 frames a second.",
      "",
      "With NAME.wav a recording is sent through the monitor, to say what it finds. The recording is a two-channel 16-bit WAV file (channel 1 current counts, channel 2 voltage"
          + " counts) with NAME.toml beside it, which gives the scale. It goes through the same path as"
          + " live samples, as fast as it can be read; nothing is written to the booth log.",
      "",
      "Seconds count from the start of the run, or of the recording.",
      "",
      "Examples:",
      "  boothlamp replay --segment 17",
      "  boothlamp replay --segment 17 --beside 12 --speed 0.25",
      "  boothlamp replay --segment 17 --zoom 3.2..3.4",
      "  boothlamp replay --segment 17 --sound arc.wav",
      "  boothlamp replay five-runs.wav --procedure stick-fillet.toml --pass fill"
    })
final class ReplayCommand implements Callable<Integer> {

  /** Without settings there is no stated accuracy: the caution band is 10 % of the window alone. */
  private static final ChannelUncertainties NOT_STATED =
      new ChannelUncertainties(new ExpandedUncertainty(0, 0), new ExpandedUncertainty(0, 0), false);

  private final Parts parts;
  private final Terminal terminal;

  @Mixin private FormatOption format;

  @Spec private CommandSpec spec;

  @ArgGroup(exclusive = false, heading = "%nA run of the booth log:%n")
  private LoggedRunOptions logged;

  @Parameters(index = "0", arity = "0..1", paramLabel = "NAME.wav", description = "The recording.")
  private Path wav;

  @Option(
      names = {"-p", "--procedure"},
      paramLabel = "FILE",
      description = "Procedure file to judge by. Without it nothing is judged.")
  private Path procedureFile;

  @Option(
      names = "--pass",
      paramLabel = "NAME",
      defaultValue = "",
      description = "Pass of the procedure. Not needed if it has only one.")
  private String passName;

  @Option(
      names = {"-s", "--settings"},
      paramLabel = "FILE",
      description =
          "Of a run: the booth's settings, which name its log. Of a recording: take the numbers for arc,"
              + " averaging, judging and accuracy from this file; without it the standard numbers, and a"
              + " caution band of 10 %% of each window.")
  private Path settingsFile;

  ReplayCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    checkUsage();
    if (logged != null) {
      playLogged();
    } else {
      playRecording();
    }
    return ExitCode.OK;
  }

  private void checkUsage() {
    if (wav == null && logged == null) {
      throw usage("give a run of the booth log, --segment ID, or a recording, NAME.wav");
    }
    if (logged == null) {
      return;
    }
    if (wav != null) {
      throw usage("--segment " + logged.segment + " and " + wav + " are two things: give one");
    }
    if (procedureFile != null || !passName.isEmpty()) {
      throw usage(
          "a run of the log stays judged as it was: --procedure and --pass are for NAME.wav");
    }
    if (logged.sound != null && Files.exists(logged.sound)) {
      throw usage(logged.sound + " is there already: choose another name, or move it away");
    }
    if (logged.step && logged.speed != null) {
      throw usage("--speed and --step are two ways to look: give one");
    }
    if (logged.speed != null && !(logged.speed >= 0.01 && logged.speed <= 100)) {
      throw usage("--speed must be from 0.01 to 100, but is " + logged.speed);
    }
  }

  private ParameterException usage(String what) {
    return new ParameterException(spec.commandLine(), what);
  }

  private void playLogged() throws IOException {
    if (logged.wantsRaw()) {
      playRaw();
      return;
    }
    Path log =
        logged.log != null ? logged.log : SettingsOption.logOf(SettingsOption.read(settingsFile));
    LoggedReplay replay = new LoggedReplay(logged, log, terminal);
    if (format.isJson()) {
      replay.writeJson();
    } else {
      replay.play();
    }
  }

  /** Raw recordings lie where the settings say. */
  private void playRaw() throws IOException {
    double[] zoom = logged.zoom == null ? null : zoomSeconds();
    BoothSettings settings = SettingsOption.read(settingsFile);
    Path log = logged.log != null ? logged.log : SettingsOption.logOf(settings);
    RawReplay raw = RawReplay.of(logged.segment, log, parts.recordings(settings), terminal);
    double[] seconds = zoom == null ? raw.wholeRun() : zoom;
    if (logged.sound == null) {
      raw.zoom(seconds[0], seconds[1], format);
    } else {
      raw.writeSound(logged.sound, seconds[0], seconds[1]);
    }
  }

  private double[] zoomSeconds() {
    try {
      return logged.zoomSeconds();
    } catch (IllegalArgumentException refused) {
      throw usage(refused.getMessage());
    }
  }

  private void playRecording() throws IOException {
    BoothSettings settings = settingsFile == null ? null : BoothSettingsFile.read(settingsFile);
    JudgingPlan plan = plan(settings);
    Parts.Recording recording = parts.recording(wav);
    ReplayCollector collector = new ReplayCollector();
    double lengthSeconds = play(recording, pipeline(settings, recording.scale()), plan, collector);
    write(
        new Replay(
            wav.getFileName().toString(),
            lengthSeconds,
            plan == null ? "" : plan.procedure().id(),
            plan == null ? "" : plan.pass().name(),
            collector.records()));
  }

  private JudgingPlan plan(BoothSettings settings) {
    return procedureFile == null
        ? null
        : Procedures.plan(
            ProcedureFile.read(procedureFile),
            passName,
            settings == null ? NOT_STATED : settings.accuracy());
  }

  private PipelineSettings pipeline(BoothSettings settings, PairScale scale) {
    return settings == null
        ? new PipelineSettings(scale, ArcRule.STANDARD, JudgingRule.STANDARD)
        : parts.pipeline(settings, scale);
  }

  /** Plays it to its end; returns its length in seconds. */
  private static double play(
      Parts.Recording recording,
      PipelineSettings pipeline,
      JudgingPlan plan,
      ReplayCollector collector) {
    Assignment assignment = new Assignment("", plan);
    try (SampleSource source = recording.source()) {
      Monitor monitor = new Monitor(source, new NoLamp(), collector, () -> 0, pipeline, assignment);
      while (monitor.step()) {
        // the step is the work
      }
      monitor.close();
      return monitor.status().sourceSeconds();
    }
  }

  private void write(Replay replay) throws IOException {
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      ReplayJson.write(replay, writer);
    } else {
      writer.print(ReplayText.render(replay, terminal.width(), terminal.colour()));
    }
    writer.flush();
  }

  /** Nobody looks at a lamp during a replay. */
  private static final class NoLamp implements Lamp {

    @Override
    public void show(Signal signal, long monotonicNanos) {
      // shown nowhere
    }

    @Override
    public void close() {
      // holds nothing
    }
  }
}
