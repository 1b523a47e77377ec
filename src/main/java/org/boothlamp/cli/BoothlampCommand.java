package org.boothlamp.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The front door: names the commands. */
@Command(
    name = "boothlamp",
    mixinStandardHelpOptions = true,
    versionProvider = BoothlampCommand.Version.class,
    header =
        "Shows a welding trainee whether the arc is inside the procedure, and keeps the booth's log.",
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "",
      "A small computer in the booth reads a current clamp and a voltage divider, finds the arc, compares"
          + " the averages of the last second with the loaded procedure, and drives a lamp that the trainee"
          + " sees through the hood: green inside, amber near a limit, red outside. The instructor reads"
          + " the log at the end of the shift.",
      ""
    },
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "boothlamp COMMAND --help says more of one command.",
      "",
      "Exit codes: 0 done, 1 it failed, 2 wrong usage or settings. NO_COLOR switches colours off.",
      "",
      "The lamp is no safety device and no acceptance of a weld. It measures; people decide. Welding can"
          + " hurt: shock, arc, high-frequency starts, mains. Follow local codes; who is licensed for the"
          + " work does it."
    })
public final class BoothlampCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "which command?");
  }

  /** The command line with all commands, ready to be executed. */
  public static CommandLine commandLine(Parts parts, Terminal terminal) {
    CommandLine line = new CommandLine(new BoothlampCommand());
    List<Object> commands =
        List.of(
            new RunCommand(parts, terminal),
            new DemoCommand(parts, terminal),
            new CheckCommand(parts, terminal),
            new SignInCommand(terminal),
            new ReplayCommand(parts, terminal),
            new RecordCommand(parts, terminal),
            new BeadCommand(terminal),
            new ReferenceCommand(terminal),
            new ReportCommand(parts, terminal),
            new SyncCommand(terminal),
            new CollectCommand(terminal),
            new ForgetCommand(terminal),
            new LampCommand(parts, terminal));
    for (Object command : commands) {
      line.addSubcommand(withHelp(new CommandLine(command)));
    }
    line.addSubcommand(CalibrateCommand.commandLine(parts, terminal));
    Failures failures = new Failures(terminal);
    line.setOut(terminal.writer());
    line.setErr(new PrintWriter(terminal.err(), true));
    line.setUsageHelpWidth(terminal.width());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setColorScheme(failures.colours());
    line.setParameterExceptionHandler(failures);
    line.setExecutionExceptionHandler(failures);
    return line;
  }

  /** Every command explains itself in the same order, with the same headings. */
  static CommandLine withHelp(CommandLine command) {
    command.getCommandSpec().addMixin("help", CommandSpec.forAnnotatedObject(new HelpOption()));
    command
        .getCommandSpec()
        .usageMessage()
        .synopsisHeading("%nUsage: ")
        .descriptionHeading("%n")
        .parameterListHeading("%nParameters:%n")
        .optionListHeading("%nOptions:%n");
    return command;
  }

  /** The one option that every command has. */
  private static final class HelpOption {

    @Option(
        names = {"-h", "--help"},
        usageHelp = true,
        description = "Show this help and exit.")
    private boolean help;
  }

  /** Version of the jar. */
  static final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
      String version = BoothlampCommand.class.getPackage().getImplementationVersion();
      return new String[] {"boothlamp " + (version == null ? "(built in place)" : version)};
    }
  }
}
