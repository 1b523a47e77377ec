package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import org.boothlamp.acquisition.Pause;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.report.ReplayScreen;
import org.boothlamp.report.SideBySide;
import org.boothlamp.report.WeldReplay;
import org.boothlamp.report.WeldReplayJson;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;

/** A run of the booth log again, alone or beside another one. */
final class LoggedReplay {

  private static final Phrases PHRASES = Phrases.in(Language.ENGLISH);

  private final LoggedRunOptions options;
  private final Path log;
  private final Terminal terminal;

  /**
   * A replay that has not begun.
   *
   * @param log the booth log
   */
  LoggedReplay(LoggedRunOptions options, Path log, Terminal terminal) {
    this.options = options;
    this.log = log;
    this.terminal = terminal;
  }

  void writeJson() throws IOException {
    PrintWriter writer = terminal.writer();
    WeldReplayJson.write(read(), PHRASES, writer);
    writer.flush();
  }

  void play() {
    SideBySide pair = read();
    ReplayScreen screen =
        new ReplayScreen(
            pair, PHRASES, ZoneId.systemDefault(), terminal.width(), terminal.colour());
    ReplayPlayer player =
        new ReplayPlayer(screen, pair.frames(), terminal, NanoClock.SYSTEM, Pause.SYSTEM);
    if (options.step) {
      player.step();
    } else if (terminal.canRedraw()) {
      player.play(options.speed == null ? 1 : options.speed);
    } else {
      player.print();
    }
    terminal.out().print(screen.figures());
    terminal.out().flush();
  }

  private SideBySide read() {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      WeldReplay one = read(reader, options.segment);
      return new SideBySide(one, options.beside == null ? null : read(reader, options.beside));
    }
  }

  private WeldReplay read(BoothLogReader reader, long segment) {
    WeldReplay replay = reader.weldReplay(segment);
    if (replay == null) {
      throw new CommandFailedException(
          log + ": there is no segment " + segment + "; boothlamp report lists the runs");
    }
    if (replay.frames() == 0) {
      throw new CommandFailedException(
          log
              + ": segment "
              + segment
              + " has no amps and volts yet, or no longer; if it is still being welded, try again"
              + " after its end");
    }
    return replay;
  }
}
