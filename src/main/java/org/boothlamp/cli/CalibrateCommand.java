package org.boothlamp.cli;

import java.util.List;
import org.boothlamp.calibration.Channel;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Names what can be done about calibrations. */
@Command(
    name = "calibrate",
    header = "Holds a sensor against a reference meter, and keeps the record.",
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "A calibration says how far the booth's numbers can be trusted: gain and zero of a sensor, and"
          + " the uncertainty of what it reads, against a meter with a certificate.",
      "",
      "It is work on live welding current: shock, arc, hot load banks. Who is qualified and, where"
          + " the law says so, licensed for it does it; local codes come first.",
    },
    commandListHeading = "%nCommands:%n",
    footer = {"", "boothlamp calibrate COMMAND --help says more of one command."})
final class CalibrateCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "which of its commands?");
  }

  /** The command with all commands below it. */
  static CommandLine commandLine(Parts parts, Terminal terminal) {
    List<CommandLine> commands =
        List.of(
            CalibrateSensorCommand.commandLine(Channel.CURRENT, parts, terminal),
            CalibrateSensorCommand.commandLine(Channel.VOLTAGE, parts, terminal),
            new CommandLine(new CalibrateCheckCommand(parts, terminal)),
            new CommandLine(new CalibrateListCommand(terminal)),
            new CommandLine(new CalibrateShowCommand(parts, terminal)),
            new CommandLine(new CalibrateCertificateCommand(parts, terminal)),
            new CommandLine(new CalibrateWithdrawCommand(parts, terminal)));
    CommandLine line = BoothlampCommand.withHelp(new CommandLine(new CalibrateCommand()));
    commands.forEach(command -> line.addSubcommand(BoothlampCommand.withHelp(command)));
    return line;
  }
}
