package org.boothlamp.cli;

import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows one signal, for testing a lamp. */
@Command(
    name = "lamp",
    header = "Shows one signal on the booth's lamp, for testing the lamp.",
    description = {
      "The lamp is the one in the settings. Stop the monitor first: two programs cannot drive one lamp."
          + " Afterwards the lamp is dark.",
      "",
      "  dark       all off",
      "  idle       a short green blink every 4 s: alive, no arc",
      "  settling   amber and green: arc seen, not judged yet",
      "  green      inside the window",
      "  amber      inside, near a limit",
      "  red        outside the window",
      "  fault      red and amber in turn: do not trust the lamp"
    })
final class LampCommand implements Callable<Integer> {

  private static final long EVERY_MILLIS = 100;

  private final Parts parts;
  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;

  @Parameters(index = "0", paramLabel = "SIGNAL", description = "One of the words above.")
  private String word;

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      defaultValue = "5",
      description = "How long, 0.1 to 3600 seconds; 5 if not given.")
  private double seconds;

  LampCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws InterruptedException {
    Signal signal = signal();
    BoothSettings settings = settingsOption.read();
    terminal
        .out()
        .println(
            "Booth "
                + settings.boothId()
                + ": "
                + signal.word()
                + " for "
                + Wording.number(seconds)
                + " s");
    try (Lamp lamp = parts.lamp(settings, terminal)) {
      show(lamp, signal);
    }
    return ExitCode.OK;
  }

  private Signal signal() {
    Signal signal = Signal.ofWord(word);
    if (signal == null) {
      throw new ParameterException(
          spec.commandLine(),
          "a lamp shows dark, idle, settling, green, amber, red or fault, but not \""
              + word
              + "\"");
    }
    if (!(seconds >= 0.1 && seconds <= 3600)) {
      throw new ParameterException(
          spec.commandLine(), "--for must be from 0.1 to 3600 seconds, but is " + seconds);
    }
    return signal;
  }

  private void show(Lamp lamp, Signal signal) throws InterruptedException {
    long end = NanoClock.SYSTEM.nanoTime() + (long) (seconds * 1e9);
    for (long now = NanoClock.SYSTEM.nanoTime(); now - end < 0; now = NanoClock.SYSTEM.nanoTime()) {
      lamp.show(signal, now);
      TimeUnit.MILLISECONDS.sleep(EVERY_MILLIS);
    }
  }
}
