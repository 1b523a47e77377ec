package org.boothlamp.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.function.LongFunction;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.ControlChart;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.report.TextPage.Style;

/**
 * One-point checks as text: a line a check with its place between the limits, and what the run says
 * as a whole. A pure function.
 */
public final class ControlChartText {

  /** Columns on either side of zero, up to the limit. */
  private static final int HALF = 8;

  private static final int BEYOND = 2;

  private ControlChartText() {}

  /**
   * The chart, lines ended by a line feed.
   *
   * @param width characters in a line, at least {@link TextReport#LEAST_WIDTH}
   */
  public static String render(ControlChart chart, ZoneId zone, int width, Colour colour) {
    TextPage page = new TextPage(Math.max(width, TextReport.LEAST_WIDTH), colour);
    append(page, chart, millis -> Instant.ofEpochMilli(millis).atZone(zone));
    return page.toString();
  }

  static void append(TextPage page, ControlChart chart, LongFunction<ZonedDateTime> local) {
    if (chart.checks().isEmpty()) {
      page.line("No check was made yet.");
      return;
    }
    String unit = chart.checks().get(0).channel().unit();
    page.left("day", 12).right("calib.", 6).right("reference", 11).right("error", 9);
    page.right("limit", 9).spaces(2).left("result", 8).text("-limit    0   +limit").newLine();
    for (CalibrationCheck check : chart.checks()) {
      append(page, check, local.apply(check.wallMillis()));
    }
    page.wrapped(
        "",
        0,
        "Errors and limits in "
            + unit
            + ", the last "
            + Numbers.counted(chart.checks().size(), "check", "checks")
            + ".");
    CalibrationWords.control(chart).forEach(words -> page.wrapped("", 0, words));
  }

  private static void append(TextPage page, CalibrationCheck check, ZonedDateTime time) {
    page.left(time.toLocalDate().toString(), 12);
    page.right(check.calibrationNumber() == 0 ? "-" : Long.toString(check.calibrationNumber()), 6);
    page.right(MeasuredValue.figure(check.reference()), 11);
    page.right(CalibrationWords.signed(check.error(), check.limit() / 10), 9);
    page.right(MeasuredValue.value(check.limit(), check.limit() / 10), 9).spaces(2);
    page.styled(check.isPassed() ? "pass" : "FAIL", check.isPassed() ? Style.GREEN : Style.RED);
    page.spaces(4).text(scale(ControlChart.share(check))).newLine();
  }

  /** Limits and zero as bars, the check as a sign; beyond the limits it is another. */
  static String scale(double share) {
    StringBuilder out = new StringBuilder(" ".repeat(2 * (HALF + BEYOND) + 1));
    int zero = HALF + BEYOND;
    out.setCharAt(zero - HALF, '|');
    out.setCharAt(zero, ':');
    out.setCharAt(zero + HALF, '|');
    if (!Double.isNaN(share)) {
      double held = Math.max(-HALF - BEYOND, Math.min(HALF + BEYOND, share * HALF));
      boolean beyond = Math.abs(share) > 1;
      int place = zero + (int) Math.round(held);
      if (beyond && Math.abs(place - zero) <= HALF) {
        place = zero + (share > 0 ? HALF + 1 : -HALF - 1);
      }
      out.setCharAt(place, beyond ? 'X' : 'o');
    }
    return out.toString().stripTrailing();
  }
}
