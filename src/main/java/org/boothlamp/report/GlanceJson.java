package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;

/**
 * The class at a glance as JSON lines for programs: of each trainee one {@code glance} line, after
 * the lines of the shift. Times are seconds, shares 0 to 1, what is not known is null.
 */
public final class GlanceJson {

  private GlanceJson() {}

  /**
   * Writes the lines and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(Glance glance, Writer writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    for (GlanceRow row : glance.rows()) {
      write(row, glance, lines);
    }
    lines.flush();
  }

  private static void write(GlanceRow row, Glance glance, JsonLines lines) throws IOException {
    lines.start("glance").text("trainee", row.summary().trainee());
    lines.count("runs", row.runs().size()).count("judged_runs", row.judgedRuns());
    lines.number("arc_s", row.operator().arcSeconds());
    lines.number("in_window_share", row.summary().total().insideShare());
    operator(row.operator(), glance.shift(), lines);
    oftenest(row.oftenest(), lines);
    change(row.change(), lines);
    lines.text("look_at", row.lookAt().word());
    lines.truth("stand_beside", glance.standBeside().contains(row)).end();
  }

  private static void operator(OperatorFactor operator, ShiftTime shift, JsonLines lines)
      throws IOException {
    lines.number("shift_s", operator.shiftSeconds()).text("shift_from", shift.basis().word());
    lines.number("operator_factor", operator.ofShift());
    lines.number("signed_in_s", operator.signedInSeconds());
    lines.number("operator_factor_signed_in", operator.ofSignedIn());
  }

  private static void oftenest(OftenOutside most, JsonLines lines) throws IOException {
    lines.text("often_outside_quantity", most == null ? "" : most.quantity().key());
    lines.text("often_outside_side", most == null ? "" : most.side().word());
    lines.count("often_outside_count", most == null ? 0 : most.count());
    lines.count("often_outside_runs", most == null ? 0 : most.runs());
    lines.text("often_outside_pass", most == null ? "" : most.pass());
  }

  private static void change(ChangeAgainstLastShifts change, JsonLines lines) throws IOException {
    boolean known = change != null;
    lines.number("earlier_in_window_share", known ? change.earlierShare() : Double.NaN);
    lines.count("earlier_runs", known ? change.earlierRuns() : 0);
    lines.count("earlier_days", known ? change.days() : 0);
    lines.number("change_share", known ? change.change() : Double.NaN);
    lines.number("change_share_low", known ? change.low() : Double.NaN);
    lines.number("change_share_high", known ? change.high() : Double.NaN);
    lines.text("change_direction", known ? change.direction().word() : "");
  }
}
