package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.TextPage.Style;

/**
 * A run as a line of figures, and a second line for what was not as it should be. 79 characters
 * wide at most while amps, volts and kilojoules have no more than four digits.
 */
final class RunRow {

  private static final int LABEL = 10;
  private static final int LENGTH = 10;
  private static final int AMPS = 9;
  private static final int VOLTS = 7;
  private static final int SIDE = 5;
  private static final int SHARE = 11;
  private static final int ENERGY = 9;
  private static final int SHORTS = 13;
  private static final String NOTE_INDENT = " ".repeat(LABEL + 2);

  private final TextPage page;

  /** Flags that every run has are said once elsewhere, not at every run. */
  private final List<RunFlag> saidElsewhere;

  RunRow(TextPage page, List<RunFlag> saidElsewhere) {
    this.page = page;
    this.saidElsewhere = saidElsewhere;
  }

  /** The names of the columns. */
  void appendColumnNames(String label) {
    page.right(label, LABEL).right("length", LENGTH);
    page.right("amps", AMPS).spaces(SIDE).right("volts", VOLTS).spaces(SIDE);
    page.right("in window", SHARE).right("energy", ENERGY).right("shorts", SHORTS).newLine();
  }

  /** One run, with its start as the label. */
  void append(String label, RunSummary summary) {
    RunRecord run = summary.run();
    page.right(label, LABEL);
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
      page.text(" not measured");
    } else {
      page.text(" ").number(perSecond, 1).text("/s");
    }
    page.rightSince(cell, SHORTS);
  }

  private void appendNotes(RunSummary summary) {
    List<String> notes = new ArrayList<>(4);
    Words.addExcursions(notes, summary.excursions());
    addFacts(notes, summary.run());
    for (RunFlag flag : summary.flags()) {
      if (!saidElsewhere.contains(flag)) {
        notes.add(note(flag, summary.run()));
      }
    }
    if (!notes.isEmpty()) {
      page.wrapped(NOTE_INDENT, NOTE_INDENT.length(), String.join("; ", notes));
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
