package org.boothlamp.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.ReplayChoice;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.SideBySide;
import org.boothlamp.report.WeldReplay;

/** Runs to be looked at again, out of the booth log, each time anew. Safe to share. */
final class ReplayRuns {

  private static final int MOST_CHOICES = 60;

  private final Path log;

  ReplayRuns(Path log) {
    this.log = log;
  }

  /**
   * The run that an address names, and the one beside it.
   *
   * @param number as it stands in the address
   * @param query may name another run in {@code beside}
   * @throws PageException if there is no such run, or it has no trace
   */
  SideBySide of(String number, Map<String, String> query) {
    String beside = query.getOrDefault("beside", "");
    long one = number(number);
    if (!Files.exists(log)) {
      throw new PageException(404, "page.error.run", number);
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      WeldReplay other = beside.isEmpty() ? null : read(reader, number(beside));
      return new SideBySide(read(reader, one), other);
    }
  }

  private static long number(String text) {
    if (!text.matches("[0-9]{1,15}")) {
      throw new PageException(404, "page.error.none");
    }
    return Long.parseLong(text);
  }

  private static WeldReplay read(BoothLogReader reader, long segment) {
    WeldReplay replay = reader.weldReplay(segment);
    if (replay == null) {
      throw new PageException(404, "page.error.run", Long.toString(segment));
    }
    if (replay.frames() == 0) {
      throw new PageException(404, "replay.page.empty", Long.toString(segment));
    }
    return replay;
  }

  /** What can be laid beside a run. */
  List<ReplayChoice> choices(RunRecord run) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.replayChoices(run, MOST_CHOICES);
    }
  }
}
