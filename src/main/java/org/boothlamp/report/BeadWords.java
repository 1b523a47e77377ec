package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/** What is said of a run's bead, in any language and units. Immutable. */
public final class BeadWords {

  private final Phrases phrases;
  private final Units units;

  public BeadWords(Phrases phrases, Units units) {
    this.phrases = phrases;
    this.units = units;
  }

  /** "bead 148 mm, travel speed 178 mm/min, arc energy 1.14 kJ/mm". */
  public String measured(HeatInput heat) {
    return String.join(
        ", ",
        phrases.say("bead.length", UnitText.length(heat.beadMillimetres(), units)),
        phrases.say("bead.travel", UnitText.speed(heat.travelMillimetresPerSecond(), units)),
        phrases.say(
            "bead.energy", UnitText.heatInput(heat.arcEnergyKilojoulesPerMillimetre(), units)));
  }

  /** "heat input 0.91 kJ/mm (k = 0.8: EN 1011-1, Table 1)". */
  public String heatInput(HeatInput heat, Process process) {
    if (process == null) {
      return phrases.say("bead.heat.unknown");
    }
    return phrases.say(
        "bead.heat",
        UnitText.heatInput(heat.heatInputKilojoulesPerMillimetre(), units),
        Numbers.fixed(heat.factor(), 1),
        source(process));
  }

  /** Where k comes from. */
  public String source(Process process) {
    return phrases.say(
        HeatInput.isFromMemory(process) ? "bead.source.memory" : "bead.source.standard");
  }

  /** "U = 0.05 kJ/mm (coverage factor 2)", or that it is not known. */
  public String uncertainty(HeatVerdict verdict) {
    double expanded = verdict.expandedKilojoulesPerMillimetre();
    return Double.isNaN(expanded)
        ? phrases.say("bead.uncertainty.unknown")
        : phrases.say("bead.uncertainty", UnitText.heatInput(expanded, units));
  }

  /** "inside 0.80 to 1.20 kJ/mm". */
  public String place(HeatVerdict verdict) {
    Window window = verdict.window();
    if (window == null) {
      return phrases.say("bead.place.none");
    }
    String limits =
        phrases.say(
            "bead.limits",
            UnitText.heatInputNumber(window.low(), units),
            UnitText.heatInput(window.high(), units));
    return switch (verdict.place()) {
      case NOT_JUDGED -> phrases.say("bead.place.unknown", limits);
      case INSIDE -> phrases.say("bead.place.inside", limits);
      case BELOW -> phrases.say("bead.place.below", limits);
      case ABOVE -> phrases.say("bead.place.above", limits);
      case TOO_NEAR -> phrases.say("bead.place.near", limits);
    };
  }

  /** What people said of a run, a note each: its bead and heat input, their words, their mark. */
  public List<String> notes(RunRecord run) {
    List<String> notes = new ArrayList<>(2);
    HeatInput heat = run.heatInput();
    if (heat != null) {
      notes.add(measured(heat) + shortHeatInput(heat, run));
      String note = run.notes().bead().note();
      if (!note.isEmpty()) {
        notes.add("\"" + VisibleText.of(note) + "\"");
      }
    }
    if (run.notes().isReference()) {
      notes.add(reference(run.notes().reference()));
    }
    return notes;
  }

  private String shortHeatInput(HeatInput heat, RunRecord run) {
    double value = heat.heatInputKilojoulesPerMillimetre();
    if (Double.isNaN(value)) {
      return "";
    }
    String side = Words.side(value, run.window(Quantity.HEAT_INPUT_KJ_PER_MM));
    return ", "
        + phrases.say("bead.heat.short", UnitText.heatInput(value, units))
        + (side.isEmpty() ? "" : Numbers.GLUE + phrases.say("shift.side." + side));
  }

  /** Why energy, and so heat input, may be another than the figures say; empty if nothing is. */
  public List<String> doubts(RunSummary summary) {
    List<String> doubts = new ArrayList<>();
    addIf(doubts, summary.has(RunFlag.GAPS), "bead.doubt.gaps");
    addIf(doubts, summary.has(RunFlag.POWER_LOSS), "bead.doubt.power");
    addIf(doubts, summary.has(RunFlag.STOPPED), "bead.doubt.stopped");
    addIf(doubts, summary.has(RunFlag.FAULT), "bead.doubt.fault");
    return doubts;
  }

  private void addIf(List<String> doubts, boolean raised, String key) {
    if (raised) {
      doubts.add(phrases.say(key));
    }
  }

  /** "reference weld: even ripples", "reference weld". */
  public String reference(ReferenceWeld reference) {
    return reference.words().isEmpty()
        ? phrases.say("bead.reference")
        : phrases.say("bead.reference.words", VisibleText.of(reference.words()));
  }
}
