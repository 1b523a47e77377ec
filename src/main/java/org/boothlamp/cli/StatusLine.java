package org.boothlamp.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.MonitorStatus;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.Colour;
import org.boothlamp.report.LampLights;

/**
 * One line that says what the booth sees now.
 *
 * <pre>
 *   07:03:12  T-04  [R  ] red       133.2 A &gt; 95-125    21.4 V   20-26    run  12.3 s
 * </pre>
 *
 * <p>A sign between value and window says on which side the value is outside. Immutable.
 */
final class StatusLine {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final Colour colour;
  private final ZoneId zone;

  StatusLine(Colour colour, ZoneId zone) {
    this.colour = colour;
    this.zone = zone;
  }

  String of(MonitorStatus status, long wallMillis) {
    JudgingPlan plan = status.assignment().plan();
    return String.format(
        Locale.ROOT,
        "%s  %-5s %s  %s  %s  %s",
        TIME.format(Instant.ofEpochMilli(wallMillis).atZone(zone)),
        status.assignment().trainee(),
        lamp(status.signal()),
        value(status.amps(), "A", plan, Quantity.AMPS),
        value(status.volts(), "V", plan, Quantity.VOLTS),
        status.arcSeconds() > 0
            ? String.format(Locale.ROOT, "run %5.1f s", status.arcSeconds())
            : "           ");
  }

  private String lamp(Signal signal) {
    String text = String.format(Locale.ROOT, "[%s] %-8s", LampLights.of(signal), signal.word());
    return colour == Colour.ANSI ? ansi(signal) + text + "\u001B[0m" : text;
  }

  private static String ansi(Signal signal) {
    return switch (signal) {
      case DARK, IDLE -> "\u001B[2m";
      case GREEN -> "\u001B[32m";
      case SETTLING, AMBER -> "\u001B[33m";
      case RED, FAULT -> "\u001B[31m";
    };
  }

  private static String value(double value, String unit, JudgingPlan plan, Quantity quantity) {
    Window window = plan == null ? null : plan.pass().window(quantity);
    String limits =
        window == null ? "" : Wording.number(window.low()) + "-" + Wording.number(window.high());
    String number = Double.isNaN(value) ? "    -" : String.format(Locale.ROOT, "%5.1f", value);
    return String.format(Locale.ROOT, "%s %s %s %-7s", number, unit, side(value, window), limits);
  }

  private static String side(double value, Window window) {
    if (window == null || Double.isNaN(value)) {
      return " ";
    }
    return value > window.high() ? ">" : value < window.low() ? "<" : " ";
  }
}
