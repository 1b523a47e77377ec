package org.boothlamp.cli;

import java.util.concurrent.Callable;
import org.boothlamp.boothlog.SignIns;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.procedure.Pass;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.LoadedProcedure;
import org.boothlamp.settings.ProcedureFolder;
import org.boothlamp.settings.Procedures;
import org.boothlamp.settings.TraineeCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says who welds now, and to which procedure. */
@Command(
    name = "sign-in",
    header = "Says who welds in this booth from now on, and to which procedure.",
    description = {
      "A running monitor takes it up within a second; a run that has begun keeps its trainee and its"
          + " procedure to its end. The sign-in is kept in the booth log and holds until the next one, or"
          + " until the monitor is started on another day.",
      "",
      "Examples:",
      "  boothlamp sign-in T-04 --procedure S-3F-18 --pass fill",
      "  boothlamp sign-in --out"
    })
final class SignInCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "TRAINEE",
      description =
          "Trainee code: 1 to 16 letters, digits, dots, hyphens. A code, never a name: the log is read"
              + " by others.")
  private String trainee;

  @Option(
      names = {"-p", "--procedure"},
      paramLabel = "ID",
      defaultValue = "",
      description = "Id of the procedure. Without it: the default procedure of the settings.")
  private String procedureId;

  @Option(
      names = "--pass",
      paramLabel = "NAME",
      defaultValue = "",
      description = "Pass of the procedure: root, fill, … Not needed if it has only one.")
  private String passName;

  @Option(names = "--out", description = "Sign out: nobody welds here for now.")
  private boolean out;

  SignInCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    checkUsage();
    BoothSettings settings = settingsOption.read();
    if (out) {
      SignIns.add(SettingsOption.logOf(settings), "", "", "", WallClock.SYSTEM);
      terminal.out().println("Signed out of booth " + settings.boothId() + ".");
      return ExitCode.OK;
    }
    signIn(settings);
    return ExitCode.OK;
  }

  private void checkUsage() {
    if (out && trainee != null) {
      throw new ParameterException(
          spec.commandLine(), "--out signs out whoever is signed in: leave TRAINEE away");
    }
    if (!out && trainee == null) {
      throw new ParameterException(
          spec.commandLine(), "who signs in? Give a trainee code, or --out to sign out");
    }
    if (trainee != null && !TraineeCode.isOne(trainee)) {
      throw new ParameterException(
          spec.commandLine(),
          "a trainee code must be "
              + TraineeCode.RULE
              + ", but is \""
              + trainee
              + "\"; choose one such as T-04");
    }
  }

  private void signIn(BoothSettings settings) {
    String id = procedureId.isEmpty() ? settings.procedures().defaultProcedure() : procedureId;
    String asked = procedureId.isEmpty() ? settings.procedures().defaultPass() : passName;
    if (id.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "which procedure? The settings name no default: give one with --procedure ID");
    }
    LoadedProcedure loaded = ProcedureFolder.read(settings.procedures().folder()).find(id);
    ChannelUncertainties uncertainties = LogCalibrations.uncertainties(settings);
    Pass pass =
        Procedures.plan(loaded, passName.isEmpty() ? asked : passName, uncertainties).pass();
    SignIns.add(SettingsOption.logOf(settings), trainee, id, pass.name(), WallClock.SYSTEM);
    terminal
        .out()
        .println(
            trainee
                + " welds in booth "
                + settings.boothId()
                + " to "
                + id
                + " revision "
                + loaded.procedure().revision()
                + ", pass "
                + pass.name()
                + ": "
                + Wording.windows(pass)
                + ".");
  }
}
