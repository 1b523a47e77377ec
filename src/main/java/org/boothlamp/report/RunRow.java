package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.TextPage.Style;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A run as a line of figures, and a second line for what was not as it should be. 79 characters
 * wide at most while amps, volts and kilojoules have no more than four digits.
 */
final class RunRow {

  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  private static final int LENGTH = 10;
  private static final int AMPS = 9;
  private static final int VOLTS = 7;
  private static final int SIDE = 5;
  private static final int SHARE = 11;
  private static final int ENERGY = 9;
  private static final int TIME = 10;
  private static final int NUMBER = 5;
  private static final int SHORTS = 13;

  private final TextPage page;
  private final int label;
  private final int shorts;
  private final String noteIndent;
  private final Units units;

  /** Flags that every run has are said once elsewhere, not at every run. */
  private final List<RunFlag> saidElsewhere;

  RunRow(TextPage page, List<RunFlag> saidElsewhere) {
    this(page, saidElsewhere, 0, Units.METRIC);
  }

  private RunRow(TextPage page, List<RunFlag> saidElsewhere, int number, Units units) {
    this.page = page;
    this.saidElsewhere = saidElsewhere;
    this.units = units;
    label = TIME + number;
    shorts = SHORTS - number;
    noteIndent = " ".repeat(label + 2);
  }

  /**
   * Rows whose labels are a number before a time. Short circuits have less room then: where they
   * were not measured stands a question mark.
   *
   * @param units of what a bead's length goes into
   */
  static RunRow numbered(TextPage page, List<RunFlag> saidElsewhere, Units units) {
    return new RunRow(page, saidElsewhere, NUMBER, units);
  }

  /** The names of the columns. */
  void appendColumnNames(String name) {
    page.right(name, label).right("length", LENGTH);
    page.right("amps", AMPS).spaces(SIDE).right("volts", VOLTS).spaces(SIDE);
    page.right("in window", SHARE).right("energy", ENERGY).right("shorts", shorts).newLine();
  }

  /** One run, with its start as the label. */
  void append(String name, RunSummary summary) {
    RunRecord run = summary.run();
    page.right(name, label);
    appendLength(run.lengthSeconds());
    appendMean(run.amps(), run, Quantity.AMPS, AMPS);
    appendMean(run.volts(), run, Quantity.VOLTS, VOLTS);
    appendShare(run.insideShare());
    appendEnergy(run.energyJoules());
    appendShorts(run.shortCircuitsPerSecond());
    page.newLine();
    appendNotes(summary);
  }

  private void appendLength(double seconds) {
    int cell = page.mark();
    page.text(" ").duration(seconds).rightSince(cell, LENGTH);
  }

  private void appendMean(double mean, RunRecord run, Quantity quantity, int width) {
    int cell = page.mark();
    page.text(" ").number(mean, 1).text(" ").text(quantity.unit()).rightSince(cell, width);
    String side = Words.side(mean, run.window(quantity));
    page.text(" ").styled(side, Style.RED).spaces(SIDE - 1 - side.length());
  }

  private void appendShare(double share) {
    int cell = page.mark();
    if (Double.isNaN(share)) {
      page.text(Numbers.NOT_JUDGED);
    } else {
      page.number(100 * share, 1).text(" %");
    }
    page.rightSince(cell, SHARE);
  }

  private void appendEnergy(double joules) {
    int cell = page.mark();
    page.text(" ").number(joules / 1_000, 1).text(" kJ").rightSince(cell, ENERGY);
  }

  private void appendShorts(double perSecond) {
    int cell = page.mark();
    if (Double.isNaN(perSecond)) {
      page.text(shorts == SHORTS ? " not measured" : " ?");
    } else {
      page.text(" ").number(perSecond, 1).text("/s");
    }
    page.rightSince(cell, shorts);
  }

  private void appendNotes(RunSummary summary) {
    List<String> notes = new ArrayList<>(4);
    Words.addExcursions(notes, summary.excursions());
    addFacts(notes, summary.run());
    notes.addAll(new BeadWords(ENGLISH, units).notes(summary.run()));
    for (RunFlag flag : summary.flags()) {
      if (!saidElsewhere.contains(flag)) {
        notes.add(note(flag, summary.run()));
      }
    }
    if (!notes.isEmpty()) {
      page.wrapped(noteIndent, noteIndent.length(), String.join("; ", notes));
    }
    String technique = new TechniqueWords(ENGLISH, units).sentence(summary.run());
    if (!technique.isEmpty()) {
      page.wrapped(noteIndent, noteIndent.length(), technique);
    }
  }

  private static void addFacts(List<String> notes, RunRecord run) {
    String side = Words.side(run.lengthSeconds(), run.window(Quantity.ARC_S));
    if (!side.isEmpty()) {
      notes.add("run length " + side);
    }
    if (run.arcOuts() > 0) {
      notes.add(Numbers.counted(run.arcOuts(), "arc-out", "arc-outs"));
    }
  }

  private static String note(RunFlag flag, RunRecord run) {
    return switch (flag) {
      case GAPS -> gaps(run);
      case FAULT -> "lamp in fault for " + Durations.words(run.faultSeconds());
      case POWER_LOSS -> "ended by power loss";
      case STOPPED -> "still burning at the end";
      case NO_TIME, UNCALIBRATED, CALIBRATION_WITHDRAWN, CALIBRATION_OVERDUE, WRONG_POLARITY ->
          flag.word();
    };
  }

  private static String gaps(RunRecord run) {
    return run.missingSeconds() > 0
        ? "gaps: " + Durations.words(run.missingSeconds()) + " not measured"
        : "ended by a gap";
  }
}
