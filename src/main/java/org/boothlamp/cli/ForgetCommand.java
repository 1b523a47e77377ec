package org.boothlamp.cli;

import java.util.concurrent.Callable;
import org.boothlamp.boothlog.Forgetting;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Removes a trainee's rows. */
@Command(
    name = "forget",
    header = "Removes everything this booth's log holds of a trainee.",
    description = {
      "Runs with their traces, touches and sign-ins are removed for good; a run that burns now stays:"
          + " repeat the command after it. The request is sent to the database or folder of the settings,"
          + " where the rows are hidden at once and removed by whoever keeps it. Batches that lie in a"
          + " folder do not change: delete them there once they are collected.",
      "",
      "Example:",
      "  boothlamp forget T-04"
    })
final class ForgetCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Mixin private SettingsOption settingsOption;

  @Parameters(index = "0", paramLabel = "TRAINEE", description = "Trainee code.")
  private String trainee;

  ForgetCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    BoothSettings settings = settingsOption.read();
    int rows = Forgetting.forget(SettingsOption.logOf(settings), trainee, WallClock.SYSTEM);
    terminal
        .out()
        .println(
            rows
                + " rows of "
                + trainee
                + " are removed from the log of booth "
                + settings.boothId()
                + (settings.sync() == null
                    ? "."
                    : "; the request goes to " + settings.sync().target().name() + "."));
    return ExitCode.OK;
  }
}
