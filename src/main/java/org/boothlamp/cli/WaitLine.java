package org.boothlamp.cli;

import java.util.Locale;
import org.boothlamp.calibration.StabilityRule.Stability;
import org.boothlamp.calibration.WindowFigures;

/**
 * Says what a sensor does while a level is waited for: a line that renews itself on a terminal, one
 * now and then elsewhere. Confined to one thread.
 */
final class WaitLine {

  private static final double RENEWED_SECONDS = 0.25;
  private static final double REPEATED_SECONDS = 30;
  private static final double HINT_SECONDS = 60;

  private final Terminal terminal;
  private final SteadySensor sensor;
  private final double begunSeconds;
  private double shownSeconds;
  private double hintSeconds;
  private boolean standing;

  /** From now on, by the sensor's time. */
  WaitLine(Terminal terminal, SteadySensor sensor) {
    this.terminal = terminal;
    this.sensor = sensor;
    begunSeconds = sensor.seconds();
    shownSeconds = begunSeconds;
    hintSeconds = begunSeconds + HINT_SECONDS;
  }

  /** How long it has been waited, by the sensor's time. */
  double seconds() {
    return sensor.seconds() - begunSeconds;
  }

  /** Shows it if it is time to. */
  void show() {
    double every = terminal.interactive() ? RENEWED_SECONDS : REPEATED_SECONDS;
    if (sensor.seconds() - shownSeconds < every) {
      return;
    }
    shownSeconds = sensor.seconds();
    if (terminal.interactive()) {
      stand(line());
    } else {
      terminal.out().println("  " + line());
    }
    hint();
  }

  private String line() {
    WindowFigures figures = sensor.figures();
    if (figures == null || figures.readings() == 0) {
      return "no samples yet";
    }
    return String.format(
        Locale.ROOT,
        "now %d  mean %.2f  sd %.2f  drift %+.2f counts  %s  %.1f of 10 s",
        sensor.lastCount(),
        figures.mean(),
        figures.standardDeviation(),
        figures.drift(),
        CalibrationTalk.amount(sensor.nominalOf(figures), sensor.channel().unit()),
        figures.seconds());
  }

  /** Once a minute, why it takes so long. */
  private void hint() {
    if (sensor.seconds() >= hintSeconds) {
      hintSeconds = sensor.seconds() + HINT_SECONDS;
      say(reason());
    }
  }

  /** Ends a line that stands, and writes another. */
  void say(String text) {
    end();
    terminal.out().println(text);
  }

  /** The last of the renewed lines goes away. */
  void end() {
    if (standing) {
      stand("");
      terminal.out().print('\r');
      standing = false;
    }
  }

  /** Over the line before, and short enough not to wrap. */
  private void stand(String text) {
    int width = terminal.width() - 1;
    String shown = text.substring(0, Math.min(width, text.length()));
    terminal.out().print('\r' + shown + " ".repeat(width - shown.length()));
    terminal.out().flush();
    standing = true;
  }

  /** What is missing for the level to be stable, with the next move. */
  String reason() {
    WindowFigures figures = sensor.figures();
    if (figures == null) {
      return "no samples yet; see that the front end is powered";
    }
    Stability stability = sensor.stability(figures);
    return switch (stability) {
      case STABLE ->
          sensor.hasReference(figures)
              ? "the level is stable"
              : "the meter answers too slowly: "
                  + figures.reference().readings()
                  + " readings in 10 s, "
                  + SteadySensor.LEAST_METER_READINGS
                  + " are needed; set it to a faster rate";
      case TOO_SHORT ->
          sensor.gaps() > 0
              ? "samples are missing (" + sensor.gaps() + " gaps); look at the line"
              : "10 s are not over yet";
      case DRIFTS ->
          String.format(
              Locale.ROOT,
              "the level drifts by %.2f counts in 10 s, %.2f are allowed; let the load warm up, or set"
                  + " it again",
              figures.drift(),
              sensor.driftLimit(figures));
      case UNEVEN ->
          "one half of the 10 s is noisier than the other; see that nothing is switched or touched";
      case CLIPPED ->
          "the converter is at its end, so the mean is wrong; choose a lower level, or look at the"
              + " zero of the sensor";
    };
  }
}
