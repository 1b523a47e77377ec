package org.boothlamp.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.RunRecord;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Marks a run as an instructor's reference weld. */
@Command(
    name = "reference",
    header = "Marks a run as a reference weld: one that an instructor shows as an example.",
    description = {
      "Reports say so beside the run, with the instructor's words. The mark can be taken back; what was"
          + " said before stays in the log.",
      "",
      "Examples:",
      "  boothlamp reference 17 --words \"steady arc length, even ripples\"",
      "  boothlamp reference 17 --withdraw"
    })
final class ReferenceCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Parameters(
      index = "0",
      paramLabel = "RUN",
      converter = RunNumber.Argument.class,
      description = "Number of the run as the report lists it, or last: the one that ended last.")
  private long run;

  @Option(
      names = "--words",
      paramLabel = "TEXT",
      defaultValue = "",
      description = "What is good about it, 200 characters at most. No names.")
  private String words;

  @Option(names = "--withdraw", description = "Take the mark back.")
  private boolean withdraw;

  ReferenceCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (withdraw && !words.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "--withdraw takes the mark back with its words: leave --words away");
    }
    BoothSettings settings = settingsOption.read();
    RunAnswer.write(spec, settings, format, terminal, () -> mark(settings));
    return ExitCode.OK;
  }

  private RunRecord mark(BoothSettings settings) {
    Beads beads = new Beads(SettingsOption.logOf(settings), WallClock.SYSTEM);
    return withdraw
        ? beads.withdrawReference(run, EnteredBy.INSTRUCTOR)
        : beads.markReference(run, words, EnteredBy.INSTRUCTOR);
  }
}
