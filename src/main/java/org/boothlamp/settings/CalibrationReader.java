package org.boothlamp.settings;

import java.util.regex.Pattern;
import org.boothlamp.calibration.AccuracyClass;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.TemperatureAllowance;
import org.boothlamp.calibration.Weighting;

/** Reads the section [calibration]. Confined to one thread. */
final class CalibrationReader {

  private static final CalibrationRules STANDARD = CalibrationRules.STANDARD;
  private static final Range MONTHS = new Range(1, 60, "months");
  private static final Range PERCENT = new Range(0, 20, "%");
  private static final TextRule WEIGHTING =
      new TextRule(
          "\"ordinary\" or \"by-uncertainty\"", Pattern.compile("ordinary|by-uncertainty"));

  private final Section section;

  CalibrationReader(Section section) {
    this.section = section;
  }

  CalibrationSettings read() {
    return new CalibrationSettings(
        rules(),
        section.optionalNumber("current_full_scale_a", new Range(1, 10_000, "A"), 500),
        section.optionalNumber("voltage_full_scale_v", new Range(1, 1_000, "V"), 50),
        temperature("current_temperature_a", "current_temperature_percent_of_reading", "A"),
        temperature("voltage_temperature_v", "voltage_temperature_percent_of_reading", "V"),
        section.number("overdue_factor", new Range(1, 10, ""), 2));
  }

  private CalibrationRules rules() {
    return new CalibrationRules(
        accuracyClass(),
        section.text("weighting", WEIGHTING, "ordinary", "ordinary").equals("ordinary")
            ? Weighting.ORDINARY
            : Weighting.BY_UNCERTAINTY,
        (int) section.whole("smallest_levels", new Range(3, 50, "levels"), 5),
        STANDARD.smallestSpanShare(),
        STANDARD.largestLinearityShare(),
        STANDARD.largestHysteresisShare(),
        section.number(
            "smallest_reference_ratio", new Range(1, 20, ""), STANDARD.smallestReferenceRatio()),
        TemperatureAllowance.NONE,
        (int) section.whole("meter_certificate_months", MONTHS, STANDARD.certificateMonths()),
        (int) section.whole("interval_months", MONTHS, STANDARD.calibrationMonths()));
  }

  private AccuracyClass accuracyClass() {
    double ofFullScale =
        section.number("class_percent_of_full_scale", new Range(0.01, 20, "%"), 2.5);
    double ofReading = section.number("class_percent_of_reading", PERCENT, 0);
    if (ofFullScale == 2.5 && ofReading == 0) {
      return AccuracyClass.STANDARD;
    }
    return new AccuracyClass("the school's own", ofFullScale / 100, ofReading / 100);
  }

  private TemperatureAllowance temperature(String constantKey, String percentKey, String unit) {
    return new TemperatureAllowance(
        section.number(constantKey, new Range(0, 100, unit), 0),
        section.number(percentKey, PERCENT, 0) / 100);
  }
}
