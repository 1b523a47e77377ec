package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.sync.SyncException;
import org.boothlamp.sync.SyncLock;
import org.boothlamp.sync.SyncStatus;
import org.boothlamp.sync.Syncer;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Sends the log's rows on, now. */
@Command(
    name = "sync",
    header = "Sends what the booth log holds to the database or folder of the settings, now.",
    description = {
      "A running monitor does so by itself; this command is for those who do not want to wait, such as"
          + " with a stick in hand. Sending twice changes nothing. Exit code 1 if something was not"
          + " sent.",
      "",
      "Examples:",
      "  boothlamp sync",
      "  boothlamp sync --status"
    })
final class SyncCommand implements Callable<Integer> {

  private static final int LOCK_TRIES = 100;
  private static final long LOCK_PAUSE_MILLIS = 100;

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Option(
      names = "--status",
      description =
          "Send nothing: say what waits, when it last worked, what is wrong, what to do about it.")
  private boolean status;

  @Option(
      names = "--retry-set-aside",
      description = "Also try the rows again that were refused and set aside.")
  private boolean retry;

  SyncCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws SyncException, IOException, InterruptedException {
    BoothSettings settings = settingsOption.read();
    if (settings.sync() == null) {
      throw new ParameterException(
          spec.commandLine(),
          settings.file() + " has no section [sync]: add one after the example booth.toml");
    }
    Path log = SettingsOption.logOf(settings);
    try (Syncer syncer =
        Syncer.open(log, settings.boothId(), settings.sync().target(), WallClock.SYSTEM)) {
      if (!status) {
        send(log, syncer);
      }
      SyncStatus now = syncer.status();
      SyncStatusText.write(now, terminal, format.isJson());
      return now.failure().isEmpty() && now.setAside().isEmpty() ? ExitCode.OK : ExitCode.SOFTWARE;
    }
  }

  private void send(Path log, Syncer syncer) throws SyncException, InterruptedException {
    SyncLock lock = waitFor(log);
    try {
      if (retry) {
        syncer.retrySetAside();
      }
      sendAll(syncer);
    } finally {
      lock.close();
    }
  }

  private void sendAll(Syncer syncer) throws SyncException {
    ProgressBar progress = new ProgressBar(terminal, syncer.backlogRows());
    try {
      for (int sent = syncer.sendNext(); sent > 0; sent = syncer.sendNext()) {
        progress.add(sent);
      }
    } finally {
      progress.end();
    }
  }

  private static SyncLock waitFor(Path log) throws SyncException, InterruptedException {
    for (int i = 0; i < LOCK_TRIES; i++) {
      SyncLock lock = SyncLock.tryTake(log);
      if (lock != null) {
        return lock;
      }
      Thread.sleep(LOCK_PAUSE_MILLIS);
    }
    throw new PartsException(
        "the monitor is sending the rows of this log already; see how far it is with --status",
        null);
  }
}
