package org.boothlamp.report;

import java.io.IOException;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.Evidence;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Steadiness;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferFigures;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A run's technique as fields of its JSON line. Uncertainties are standard ones, k = 1; shares are
 * 0 to 1.
 */
final class TechniqueJson {

  private static final TechniqueWords ENGLISH =
      new TechniqueWords(Phrases.in(Language.ENGLISH), Units.METRIC);

  private TechniqueJson() {}

  /** The sentence in {@code technique}; the figures and causes in objects, left out if not read. */
  static void write(JsonLines lines, RunRecord run) throws IOException {
    lines.text("technique", ENGLISH.sentence(run));
    TechniqueReading reading = run.notes().technique();
    if (reading == null) {
      return;
    }
    lines.startItem("technique_figures");
    writeHand(lines, reading.steadiness());
    writeEstimate(lines, "stick_out", reading.stickOutMm());
    lines.text("transfer", reading.transferState().word());
    writeTransfer(lines, reading.transfer());
    writeSwings(lines, reading.swings());
    lines.number("movement_period_s", reading.beat().periodSeconds());
    lines.number("movement_strength", reading.beat().strength()).endItem();
    lines.startArray("excursion_causes");
    for (ExplainedSpell spell : reading.spells()) {
      writeCause(lines, spell);
    }
    lines.endArray();
  }

  private static void writeHand(JsonLines lines, Steadiness hand) throws IOException {
    lines.text("steady_quantity", hand.quantity().key()).number("level", hand.level());
    lines.number("spread", hand.spread()).number("spread_percent", hand.spreadPercent());
    lines.number("drift_per_minute", hand.driftPerMinute());
    lines.number("steady_after_s", hand.steadyAfterSeconds()).count("restarts", hand.restarts());
  }

  private static void writeEstimate(JsonLines lines, String name, Estimate estimate)
      throws IOException {
    lines.number(name + "_mm", estimate.value());
    lines.number(name + "_uncertainty_mm", estimate.uncertainty());
  }

  private static void writeTransfer(JsonLines lines, TransferFigures transfer) throws IOException {
    if (transfer == null) {
      return;
    }
    lines.number("transfer_shorts_per_s", transfer.shortsPerSecond());
    lines.number("transfer_cycle_s", transfer.meanCycleSeconds());
    lines.number("transfer_cycle_deviation_s", transfer.cycleDeviationSeconds());
    lines.number("transfer_short_s", transfer.meanShortSeconds());
    lines.number("transfer_shorted_share", transfer.shortedShare());
    lines.number("transfer_irregularity", transfer.irregularity());
    lines.number("transfer_short_amps", transfer.meanShortAmps());
    lines.number("transfer_short_peak_amps", transfer.meanPeakAmps());
  }

  /** A pulse has a peak and a base, alternating current a balance. */
  private static void writeSwings(JsonLines lines, SwingFigures swings) throws IOException {
    if (swings == null) {
      return;
    }
    boolean alternating = swings.isAlternating();
    lines.number("swing_hz", swings.hertz());
    lines.number(
        "electrode_negative_share", alternating ? swings.electrodeNegativeShare() : Double.NaN);
    lines.number("peak_share", alternating ? Double.NaN : swings.peakShare());
    lines.number("peak_amps", swings.peakAmps()).number("base_amps", swings.baseAmps());
  }

  private static void writeCause(JsonLines lines, ExplainedSpell spell) throws IOException {
    Evidence evidence = spell.evidence();
    lines.startItem().text("quantity", spell.spell().quantity().key());
    lines.number("start_s", spell.spell().startSeconds());
    lines.text("cause", spell.cause().word()).text("doubt", spell.doubt().word());
    lines.number("confidence", spell.confidence());
    lines.text("compared_with", evidence.reference().word());
    lines.number("delta_amps", evidence.deltaAmps());
    lines.number("delta_amps_uncertainty", evidence.deltaAmpsUncertainty());
    lines.number("delta_volts", evidence.deltaVolts());
    lines.number("delta_volts_uncertainty", evidence.deltaVoltsUncertainty());
    lines.number("source_slope", evidence.sourceSlope());
    lines.number("source_slope_uncertainty", evidence.sourceSlopeUncertainty());
    writeEstimate(lines, "length_change", spell.lengthChangeMm());
    lines.endItem();
  }
}
