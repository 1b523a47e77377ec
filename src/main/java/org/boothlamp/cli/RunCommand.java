package org.boothlamp.cli;

import java.util.concurrent.Callable;
import org.boothlamp.settings.BoothSettings;
import org.tinylog.Logger;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;

/** The daemon. */
@Command(
    name = "run",
    header = "Runs the booth monitor until it is stopped.",
    description = {
      "Reads samples, drives the lamp and writes the booth log. Everything is checked before anything"
          + " starts; what is wrong is said with file, line and next move, and nothing runs"
          + " half-configured.",
      "",
      "Ends in order on SIGTERM or SIGINT: the lamp goes dark, the log is closed. A Java machine that"
          + " was stopped by SIGTERM exits with 143."
    })
final class RunCommand implements Callable<Integer> {

  private final Parts parts;
  private final Terminal terminal;

  @Mixin private SettingsOption settingsOption;

  RunCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws InterruptedException {
    BoothSettings settings = settingsOption.read();
    try (RunningBooth booth = parts.booth(settings, terminal)) {
      booth.closeOnShutdown();
      booth.start();
      booth.awaitEnd();
      return exitCode(booth.failure());
    }
  }

  private static int exitCode(Throwable failure) {
    if (failure == null) {
      return ExitCode.OK;
    }
    Logger.error(
        failure,
        "the monitor has ended because a part of it failed; start it again, and report this if it"
            + " comes back");
    return ExitCode.SOFTWARE;
  }
}
