package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.TextReport;
import org.tinylog.Logger;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A simulated shift through the whole path. */
@Command(
    name = "demo",
    header = "Plays a simulated shift through the whole monitor, then prints the shift's report.",
    description = {
      "Three trainees take turns in one booth. Machine, arc and hands are computed by a circuit"
          + " simulator; from the sample pairs on, everything is the real monitor: arc detection, judging,"
          + " lamp, booth log, report. No hardware and no settings are needed, and nothing is left behind"
          + " unless --keep is given."
    })
final class DemoCommand implements Callable<Integer> {

  private static final long SCREEN_MILLIS = 100;
  private static final long LINE_MILLIS = 1_000;

  private final Parts parts;
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Option(
      names = "--speed",
      paramLabel = "N",
      defaultValue = "50",
      description = "Times faster than life, 1 to 200; 50 if not given.")
  private double speed;

  @Option(
      names = "--keep",
      paramLabel = "FOLDER",
      description = "Keep the booth log in this folder, to look at with boothlamp report --log.")
  private Path keep;

  /** The booth of a demo that is under way, for whoever interrupts it. */
  private volatile RunningBooth running;

  private volatile boolean abandoned;

  DemoCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (!(speed >= 1 && speed <= 200)) {
      throw new ParameterException(
          spec.commandLine(), "--speed must be from 1 to 200, but is " + speed);
    }
    if (keep != null) {
      return play(keep);
    }
    Path folder = Files.createTempDirectory("boothlamp-demo");
    Thread onInterrupt = new Thread(() -> abandon(folder), "demo-abandon");
    Runtime.getRuntime().addShutdownHook(onInterrupt);
    try {
      return play(folder);
    } finally {
      if (!abandoned) {
        Runtime.getRuntime().removeShutdownHook(onInterrupt);
        delete(folder);
      }
    }
  }

  /** Ctrl-C in the middle leaves nothing behind either. */
  private void abandon(Path folder) {
    abandoned = true;
    RunningBooth booth = running;
    if (booth != null) {
      booth.close();
    }
    try {
      delete(folder);
    } catch (IOException failure) {
      terminal.err().println("boothlamp: " + folder + " is left behind: " + failure);
    }
  }

  private int play(Path folder) throws InterruptedException {
    Path log = folder.resolve(BoothLog.FILE_NAME);
    refuseUsedLog(log);
    introduce();
    long from;
    long until;
    try (RunningBooth booth = parts.demo(DemoScenario.shift(), log, speed)) {
      running = booth;
      from = booth.wallMillis();
      booth.start();
      watch(booth);
      if (abandoned) {
        return ExitCode.SOFTWARE;
      }
      until = booth.wallMillis();
      if (booth.failure() != null) {
        Logger.error(booth.failure(), "the demo has ended because a part of the monitor failed");
        return ExitCode.SOFTWARE;
      }
    }
    report(log, from, until);
    return ExitCode.OK;
  }

  private void refuseUsedLog(Path log) {
    if (Files.exists(log)) {
      throw new ParameterException(
          spec.commandLine(),
          log + " is there already: the demo mixes with no log; give --keep another folder");
    }
  }

  private void introduce() {
    PrintStream out = terminal.out();
    out.println(
        "A simulated shift in booth "
            + DemoScenario.BOOTH_ID
            + ", "
            + Wording.number(speed)
            + " times faster than life. Invented, not measured.");
    out.println(
        "The lamp is no safety device and no acceptance of a weld. Local codes and licensed practice"
            + " come first.");
    out.println();
  }

  private void watch(RunningBooth booth) throws InterruptedException {
    StatusLine line = new StatusLine(terminal.colour(), ZoneId.systemDefault());
    while (booth.isRunning()) {
      show(line.of(booth.status(), booth.wallMillis()));
      TimeUnit.MILLISECONDS.sleep(terminal.interactive() ? SCREEN_MILLIS : LINE_MILLIS);
    }
    if (terminal.interactive()) {
      terminal.out().println();
    }
    terminal.out().println();
  }

  /** On a terminal one line that changes; elsewhere a line a second. */
  private void show(String line) {
    if (terminal.interactive()) {
      terminal.out().print("\r" + line + "\u001B[K");
      terminal.out().flush();
    } else {
      terminal.out().println(line);
    }
  }

  private void report(Path log, long from, long until) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      ShiftSpan span = new ShiftSpan(from, until + 1, ZoneId.systemDefault());
      ShiftReport report =
          ShiftReport.of(
              reader.read(span.fromWallMillis(), span.untilWallMillis()),
              span,
              DemoScenario.BOOTH_ID,
              "Simulated shift");
      terminal.out().print(TextReport.render(report, terminal.width(), terminal.colour()));
    }
    if (keep != null) {
      terminal.out().println("The log is kept: boothlamp report --log " + log);
      terminal
          .out()
          .println(
              "As a page: boothlamp report --log " + log + " --format html --output shift.html");
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
