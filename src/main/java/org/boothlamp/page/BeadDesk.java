package org.boothlamp.page;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.procedure.Process;
import org.boothlamp.report.BeadWords;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.HeatVerdict;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;

/** Reads and writes what people say of a run, each time in one go. Safe to share. */
final class BeadDesk {

  private final Path log;
  private final ZoneId zone;
  private final WallClock clock;
  private final BeadWords words;

  BeadDesk(Path log, ZoneId zone, WallClock clock, BeadWords words) {
    this.log = log;
    this.zone = zone;
    this.clock = clock;
    this.words = words;
  }

  /** What follows from a run's bead; null if none was entered. */
  HeatVerdict verdict(RunRecord run) {
    if (run.notes().bead() == null) {
      return null;
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      RunSummary summary = reader.runSummary(run.id(), zone, clock.epochMillis());
      return HeatVerdict.of(summary, reader.calibrations());
    }
  }

  /** The same in words, a line each. */
  List<String> words(RunRecord run, HeatVerdict verdict) {
    Process process = run.process().isEmpty() ? null : Process.ofNumber(run.process());
    List<String> lines = new ArrayList<>();
    lines.add(words.measured(verdict.heat()));
    lines.add(words.heatInput(verdict.heat(), process));
    if (process != null) {
      lines.add(words.place(verdict));
      lines.add(words.uncertainty(verdict));
    }
    return lines;
  }

  /**
   * Enters a bead.
   *
   * @throws org.boothlamp.report.BeadRefusedException if it cannot be that run's
   */
  void enter(long run, double lengthMillimetres, String note, EnteredBy by) {
    new Beads(log, clock).enter(run, lengthMillimetres, note, by);
  }

  /** Marks a run as a reference weld. */
  void mark(long run, String said) {
    new Beads(log, clock).markReference(run, said, EnteredBy.INSTRUCTOR);
  }

  /** Takes such a mark back. */
  void withdraw(long run) {
    new Beads(log, clock).withdrawReference(run, EnteredBy.INSTRUCTOR);
  }
}
