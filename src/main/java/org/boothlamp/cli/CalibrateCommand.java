package org.boothlamp.cli;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Holds a sensor against a reference meter, and shows what came of it. */
@Command(
    name = "calibrate",
    header = "Holds a sensor against a reference meter, and shows what came of it.",
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n",
    description = {
      "Every calibration is numbered and stays in the booth log with every point that was taken."
    })
final class CalibrateCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "which command?");
  }

  /** The commands below this one. */
  static List<Object> commands(Parts parts, Terminal terminal) {
    return List.of(
        new CalibrateShowCommand(parts, terminal),
        new CalibrateCertificateCommand(parts, terminal));
  }
}
