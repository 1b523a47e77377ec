package org.boothlamp.report;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Collectors;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A shift as one table for a spreadsheet: a row a trainee ({@code kind} is {@code trainee}), then a
 * row a run. Column names carry units, shares are 0 to 1, what is not known is empty; sentences are
 * in the language asked for. A pure function.
 */
public final class ShiftCsv {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  private static final List<String> COLUMNS =
      List.of(
          "kind",
          "booth",
          "trainee",
          "start",
          "procedure",
          "revision",
          "pass",
          "process",
          "runs",
          "run",
          "arc_s",
          "judged_s",
          "in_window_share",
          "green_s",
          "amber_s",
          "red_s",
          "settling_s",
          "fault_s",
          "missing_s",
          "mean_amps",
          "amps_low",
          "amps_high",
          "mean_volts",
          "volts_low",
          "volts_high",
          "energy_j",
          "mean_power_w",
          "short_circuits_per_s",
          "arc_outs",
          "touches",
          "stuck",
          "outside",
          "flags",
          "technique",
          "bead_length_mm",
          "travel_speed_mm_per_s",
          "heat_input_kj_per_mm",
          "reference_weld",
          "shift_s",
          "operator_factor",
          "signed_in_s",
          "operator_factor_signed_in",
          "earlier_in_window_share",
          "earlier_days",
          "change_direction",
          "stand_beside",
          "look_at");

  private final ShiftReport report;
  private final Glance glance;
  private final ShiftWords words;
  private final CsvTable table = new CsvTable(COLUMNS);

  private ShiftCsv(ShiftReport report, Glance glance, Phrases phrases) {
    this.report = report;
    this.glance = glance;
    this.words = new ShiftWords(phrases, Units.METRIC);
  }

  /** The whole table. */
  public static String render(ShiftReport report, Glance glance, Phrases phrases) {
    return new ShiftCsv(report, glance, phrases).render();
  }

  private String render() {
    glance.rows().forEach(this::trainee);
    report.allRuns().forEach(this::run);
    return table.toString();
  }

  private void trainee(GlanceRow row) {
    TraineeSummary trainee = row.summary();
    table.word("kind", "trainee").text("booth", String.join(" ", row.booths()));
    table.text("trainee", trainee.trainee()).count("runs", trainee.total().runs());
    figures(trainee.total());
    if (trainee.passes().size() == 1) {
      pass(trainee.passes().get(0).pass());
      windows(trainee.passes().get(0).pass());
      table.number("mean_amps", trainee.total().meanAmps());
      table.number("mean_volts", trainee.total().meanVolts());
    }
    table.count("touches", trainee.touches()).count("stuck", trainee.stuck());
    operator(row.operator());
    change(row.change());
    table.word("stand_beside", glance.standBeside().contains(row) ? "yes" : "no");
    String oftenest = words.oftenest(row);
    table.text("look_at", oftenest.isEmpty() ? words.lookAt(row) : both(oftenest, row));
    table.endRow();
  }

  private String both(String oftenest, GlanceRow row) {
    return oftenest + ". " + words.lookAt(row);
  }

  private void figures(Figures figures) {
    table.number("arc_s", figures.arcSeconds()).number("judged_s", figures.judgedSeconds());
    table.number("in_window_share", figures.insideShare());
    table.number("green_s", figures.greenSeconds()).number("amber_s", figures.amberSeconds());
    table.number("red_s", figures.redSeconds()).number("settling_s", figures.settlingSeconds());
    table.number("fault_s", figures.faultSeconds());
    table.number("missing_s", figures.missingSeconds());
    table.number("energy_j", figures.energyJoules()).count("arc_outs", figures.arcOuts());
    table.text("outside", words.excursions(figures.excursions()));
  }

  private void pass(PassKey pass) {
    table.text("procedure", pass.procedureId()).text("revision", pass.revision());
    table.text("pass", pass.pass());
  }

  private void windows(PassKey pass) {
    window("amps", pass.window(Quantity.AMPS));
    window("volts", pass.window(Quantity.VOLTS));
  }

  private void window(String name, Window window) {
    if (window != null) {
      table.number(name + "_low", window.low()).number(name + "_high", window.high());
    }
  }

  private void operator(OperatorFactor operator) {
    table.number("shift_s", operator.shiftSeconds());
    table.number("operator_factor", operator.ofShift());
    table.number("signed_in_s", operator.signedInSeconds());
    table.number("operator_factor_signed_in", operator.ofSignedIn());
  }

  private void change(ChangeAgainstLastShifts change) {
    if (change != null) {
      table.number("earlier_in_window_share", change.earlierShare());
      table.count("earlier_days", change.days());
      table.word("change_direction", change.direction().word());
    }
  }

  private void run(RunSummary summary) {
    RunRecord run = summary.run();
    PassKey pass = PassKey.of(run);
    table
        .word("kind", "run")
        .count("run", run.id())
        .text("booth", run.booth())
        .text("trainee", run.trainee());
    if (!summary.has(RunFlag.NO_TIME)) {
      table.word("start", TIME.format(report.span().local(run.startWallMillis())));
    }
    pass(pass);
    windows(pass);
    table.text("process", run.process()).number("arc_s", run.lengthSeconds());
    levels(run);
    table.number("mean_amps", run.amps()).number("mean_volts", run.volts());
    table.number("energy_j", run.energyJoules()).number("mean_power_w", run.meanWatts());
    table.number("short_circuits_per_s", run.shortCircuitsPerSecond());
    table.count("arc_outs", run.arcOuts());
    table.text("outside", words.excursions(summary.excursions()));
    table.text(
        "flags", summary.flags().stream().map(words::flag).collect(Collectors.joining("; ")));
    table.text("technique", words.technique(run));
    said(run);
    table.endRow();
  }

  private void said(RunRecord run) {
    HeatInput heat = run.heatInput();
    if (heat != null) {
      table.number("bead_length_mm", heat.beadMillimetres());
      table.number("travel_speed_mm_per_s", heat.travelMillimetresPerSecond());
      table.number("heat_input_kj_per_mm", heat.heatInputKilojoulesPerMillimetre());
    }
    table.word("reference_weld", run.notes().isReference() ? "yes" : "no");
  }

  private void levels(RunRecord run) {
    table.number("judged_s", run.judgedSeconds()).number("in_window_share", run.insideShare());
    table.number("green_s", run.greenSeconds()).number("amber_s", run.amberSeconds());
    table.number("red_s", run.redSeconds()).number("settling_s", run.settlingSeconds());
    table.number("fault_s", run.faultSeconds()).number("missing_s", run.missingSeconds());
  }
}
