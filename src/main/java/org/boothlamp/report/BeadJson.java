package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/** A run's bead and mark as JSON. What is not known is null. */
public final class BeadJson {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ISO_OFFSET_DATE_TIME;
  private static final BeadWords ENGLISH =
      new BeadWords(Phrases.in(Language.ENGLISH), Units.METRIC);

  private BeadJson() {}

  /**
   * One {@code bead} line: the run, its bead, what follows from it, and how sure that is.
   *
   * @param verdict null if no bead was entered
   * @throws IOException if the writer does
   */
  public static void write(RunSummary summary, HeatVerdict verdict, ZoneId zone, Writer writer)
      throws IOException {
    JsonLines lines = new JsonLines(writer);
    RunRecord run = summary.run();
    lines.start("bead").count("run", run.id()).text("booth", run.booth());
    lines.text("trainee", run.trainee()).text("procedure", run.procedureId());
    lines.text("revision", run.procedureRevision()).text("pass", run.pass());
    lines.text("process", run.process()).text("start", time(run.startWallMillis(), zone));
    lines.number("arc_s", run.lengthSeconds()).number("energy_j", run.energyJoules());
    writeNotes(lines, run);
    EnteredBead bead = run.notes().bead();
    lines.text("entered", bead == null ? "" : time(bead.wallMillis(), zone));
    writeVerdict(lines, run, verdict);
    lines.startArray("flags");
    for (RunFlag flag : summary.flags()) {
      lines.item(flag.word());
    }
    lines.endArray().end();
    lines.flush();
  }

  /** The fields of what was said of a run, and of what follows from its bead. */
  static void writeNotes(JsonLines lines, RunRecord run) throws IOException {
    EnteredBead bead = run.notes().bead();
    HeatInput heat = run.heatInput();
    lines.number("bead_length_mm", bead == null ? Double.NaN : bead.lengthMillimetres());
    lines.text("bead_note", bead == null ? "" : bead.note());
    lines.text("bead_entered_by", bead == null ? "" : bead.by().word());
    lines.number(
        "travel_speed_mm_per_s", heat == null ? Double.NaN : heat.travelMillimetresPerSecond());
    lines.number(
        "arc_energy_kj_per_mm",
        heat == null ? Double.NaN : heat.arcEnergyKilojoulesPerMillimetre());
    lines.number("heat_input_factor", heat == null ? Double.NaN : heat.factor());
    lines.number(
        "heat_input_kj_per_mm",
        heat == null ? Double.NaN : heat.heatInputKilojoulesPerMillimetre());
    ReferenceWeld reference = run.notes().reference();
    lines.truth("reference_weld", reference != null);
    lines.text("reference_words", reference == null ? "" : reference.words());
  }

  private static void writeVerdict(JsonLines lines, RunRecord run, HeatVerdict verdict)
      throws IOException {
    boolean factorKnown = verdict != null && !Double.isNaN(verdict.heat().factor());
    lines.text(
        "heat_input_factor_source",
        factorKnown ? ENGLISH.source(Process.ofNumber(run.process())) : "");
    lines.number(
        "heat_input_expanded_uncertainty_kj_per_mm",
        verdict == null ? Double.NaN : verdict.expandedKilojoulesPerMillimetre());
    Window window = run.window(Quantity.HEAT_INPUT_KJ_PER_MM);
    lines.number("heat_input_low_kj_per_mm", window == null ? Double.NaN : window.low());
    lines.number("heat_input_high_kj_per_mm", window == null ? Double.NaN : window.high());
    lines.text("verdict", verdict == null ? "" : verdict.place().word());
  }

  private static String time(long wallMillis, ZoneId zone) {
    return TIME.format(Instant.ofEpochMilli(wallMillis).atZone(zone));
  }
}
