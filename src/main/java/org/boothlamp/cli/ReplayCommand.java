package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Sends a recording through the monitor. */
@Command(
    name = "replay",
    header = "Sends a recording through the monitor and says what it finds.",
    description = {
      "The recording is a two-channel 16-bit WAV file (channel 1 current counts, channel 2 voltage"
          + " counts) with NAME.toml beside it, which gives the scale. It goes through the same path as"
          + " live samples, as fast as it can be read; nothing is written to the booth log.",
      "",
      "Seconds count from the start of the recording.",
      "",
      "Example:",
      "  boothlamp replay five-runs.wav --procedure stick-fillet.toml --pass fill"
    })
final class ReplayCommand implements Callable<Integer> {

  /** Without settings there is no stated accuracy: the caution band is 10 % of the window alone. */
  private static final ChannelUncertainties NOT_STATED =
      new ChannelUncertainties(new ExpandedUncertainty(0, 0), new ExpandedUncertainty(0, 0), false);

  private final Parts parts;
  private final Terminal terminal;

  @Mixin private FormatOption format;

  @Parameters(index = "0", paramLabel = "NAME.wav", description = "The recording.")
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
          "Take the numbers for arc, averaging, judging and accuracy from this settings file. Without"
              + " it: the standard numbers, and a caution band of 10 %% of each window.")
  private Path settingsFile;

  ReplayCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
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
    return ExitCode.OK;
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
