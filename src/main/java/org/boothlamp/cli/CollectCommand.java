package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.boothlamp.boothlog.CollectedLog;
import org.boothlamp.sync.Collector;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads booths' folders into one log. */
@Command(
    name = "collect",
    header = "Reads the folders that booths have synced into one log, for reports on all of them.",
    description = {
      "Reading a folder again changes nothing. A damaged file is refused by its name, everything else is"
          + " collected; the exit code is then 1.",
      "",
      "Examples:",
      "  boothlamp collect /media/stick/boothlamp --into class.db",
      "  boothlamp report --log class.db"
    })
final class CollectCommand implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "FOLDER",
      description = "Folders; those inside them are looked through as well.")
  private List<Path> folders;

  @Option(
      names = "--into",
      paramLabel = "FILE",
      defaultValue = "collected.db",
      description = "The log to collect into; made if missing. Default: collected.db.")
  private Path into;

  CollectCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    for (Path folder : folders) {
      if (!Files.isDirectory(folder)) {
        throw new ParameterException(
            spec.commandLine(), "there is no folder " + folder + "; is the stick plugged in?");
      }
    }
    try (CollectedLog log = CollectedLog.open(into)) {
      return tell(Collector.collect(folders, log));
    }
  }

  private int tell(Collector.Result result) {
    for (Collector.Refusal refusal : result.refusals()) {
      terminal.err().println("boothlamp: " + refusal.file() + ": " + refusal.why());
    }
    terminal
        .out()
        .println(
            result.batches()
                + " batches found, "
                + result.newBatches()
                + " new with "
                + result.newRows()
                + " rows, "
                + result.refusals().size()
                + " refused: "
                + into);
    return result.refusals().isEmpty() ? ExitCode.OK : ExitCode.SOFTWARE;
  }
}
