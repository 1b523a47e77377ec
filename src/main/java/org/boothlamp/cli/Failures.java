package org.boothlamp.cli;

import org.boothlamp.acquisition.SourceException;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.lamp.LampUnavailableException;
import org.boothlamp.report.Colour;
import org.boothlamp.settings.SettingsException;
import org.boothlamp.sync.SyncException;
import picocli.CommandLine;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Help;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * Says what went wrong and picks the exit code: 2 for wrong usage and refused settings, 1 for
 * everything else. What a person can do something about is said in words; only a fault of the
 * program shows where in the program it happened.
 */
final class Failures implements IParameterExceptionHandler, IExecutionExceptionHandler {

  private final Terminal terminal;

  Failures(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public int handleParseException(ParameterException refused, String[] args) {
    String command = refused.getCommandLine().getCommandSpec().qualifiedName();
    say(refused.getMessage());
    say("try: " + command + " --help");
    return ExitCode.USAGE;
  }

  @Override
  public int handleExecutionException(
      Exception failure, CommandLine command, ParseResult parseResult) {
    if (failure instanceof SettingsException) {
      failure.getMessage().lines().forEach(this::say);
      return ExitCode.USAGE;
    }
    if (isExplained(failure)) {
      say(failure.getMessage());
    } else {
      say("a fault of the program; please report it with what stands below");
      failure.printStackTrace(terminal.err());
    }
    return ExitCode.SOFTWARE;
  }

  private static boolean isExplained(Exception failure) {
    return failure instanceof BoothLogException
        || failure instanceof SourceException
        || failure instanceof LampUnavailableException
        || failure instanceof SyncException
        || failure instanceof PartsException
        || failure instanceof CommandFailedException;
  }

  private void say(String line) {
    terminal.err().println("boothlamp: " + line);
  }

  /** Help is as coloured as answers are. */
  Help.ColorScheme colours() {
    return Help.defaultColorScheme(terminal.colour() == Colour.ANSI ? Help.Ansi.ON : Help.Ansi.OFF);
  }
}
