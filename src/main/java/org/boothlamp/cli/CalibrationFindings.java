package org.boothlamp.cli;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/** What a check says of the calibrations in use. */
final class CalibrationFindings {

  private static final String PART = "calibration";

  private final SensorsInUse sensors;
  private final List<JudgingPlan> plans;
  private final LocalDate today;

  CalibrationFindings(SensorsInUse sensors, List<JudgingPlan> plans, LocalDate today) {
    this.sensors = sensors;
    this.plans = plans;
    this.today = today;
  }

  /** One line a channel. */
  List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      findings.add(finding(sensors.of(channel)));
    }
    return findings;
  }

  private Finding finding(SensorInUse sensor) {
    String detail = sensor.words() + days(sensor) + uncertainty(sensor);
    String calibrate = "boothlamp calibrate " + sensor.channel().word();
    return switch (sensor.state()) {
      case OK -> Finding.good(PART, detail);
      case OVERDUE, MISSING -> Finding.note(PART, detail, calibrate);
    };
  }

  private String days(SensorInUse sensor) {
    if (!sensor.isCalibrated()) {
      return "";
    }
    long left = ChronoUnit.DAYS.between(today, sensor.due());
    long days = Math.abs(left);
    return " (" + days + (days == 1 ? " day " : " days ") + (left > 0 ? "left)" : "over)");
  }

  /** U where it matters most: in the middle of the narrowest window. */
  private String uncertainty(SensorInUse sensor) {
    Window narrowest =
        narrowest(sensor.channel() == Channel.CURRENT ? Quantity.AMPS : Quantity.VOLTS);
    if (narrowest == null) {
      return "";
    }
    double middle = (narrowest.low() + narrowest.high()) / 2;
    String unit = " " + sensor.channel().unit();
    return ", U = "
        + MeasuredValue.uncertainty(sensor.uncertainty().at(middle))
        + unit
        + " at "
        + MeasuredValue.value(middle, Double.NaN)
        + unit
        + ", the middle of the narrowest window";
  }

  private Window narrowest(Quantity quantity) {
    Window narrowest = null;
    for (JudgingPlan plan : plans) {
      Window window = plan.pass().window(quantity);
      if (window != null && (narrowest == null || window.width() < narrowest.width())) {
        narrowest = window;
      }
    }
    return narrowest;
  }
}
