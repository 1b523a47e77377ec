package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.calibration.AccuracyClass;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.TemperatureAllowance;
import org.boothlamp.calibration.Weighting;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section [calibration]. */
class CalibrationReaderTest {

  /** Lines 1 to 5; what a test adds stands on line 6. */
  private static final String HEAD =
      """
      [booth]
      id = "B-07"
      [source]
      kind = "simulated"
      [calibration]
      """;

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "booth.toml", BoothSettingsFile::read);
  }

  private CalibrationSettings read(String lines) {
    return BoothSettingsFile.read(refusals.write(HEAD + lines)).calibration();
  }

  @Test
  void shouldTakeTheStandardRulesWhereNothingIsSaid() {
    CalibrationSettings settings = read("");
    assertEquals(CalibrationRules.STANDARD, settings.rules());
    assertEquals(Double.NaN, settings.fullScale(Channel.CURRENT));
    assertEquals(Double.NaN, settings.fullScale(Channel.VOLTAGE));
    assertEquals(TemperatureAllowance.NONE, settings.rules(Channel.CURRENT).temperature());
    assertEquals(2, settings.overdueFactor());
  }

  @Test
  void shouldReadEveryKey() {
    CalibrationSettings settings =
        read(
            """
            current_full_scale_a = 400
            voltage_full_scale_v = 60
            class_percent_of_full_scale = 1
            class_percent_of_reading = 0.5
            smallest_levels = 7
            smallest_reference_ratio = 5
            weighting = "by-uncertainty"
            current_temperature_a = 0.3
            current_temperature_percent_of_reading = 0.2
            voltage_temperature_v = 0.02
            voltage_temperature_percent_of_reading = 0.1
            meter_certificate_months = 18
            interval_months = 6
            overdue_factor = 3
            """);
    CalibrationRules rules = settings.rules(Channel.CURRENT);
    assertEquals(new AccuracyClass("the school's own", 0.01, 0.005), rules.accuracyClass());
    assertEquals(Weighting.BY_UNCERTAINTY, rules.weighting());
    assertEquals(7, rules.smallestLevels());
    assertEquals(5, rules.smallestReferenceRatio());
    assertEquals(18, rules.certificateMonths());
    assertEquals(6, rules.calibrationMonths());
    assertEquals(new TemperatureAllowance(0.3, 0.002), rules.temperature());
    assertEquals(
        new TemperatureAllowance(0.02, 0.001), settings.rules(Channel.VOLTAGE).temperature());
    assertEquals(400, settings.fullScale(Channel.CURRENT));
    assertEquals(60, settings.fullScale(Channel.VOLTAGE));
    assertEquals(3, settings.overdueFactor());
  }

  @ParameterizedTest
  @CsvSource({
    "current_full_scale_a, 0.5",
    "current_full_scale_a, 20000",
    "voltage_full_scale_v, 0",
    "voltage_full_scale_v, 2000",
    "class_percent_of_full_scale, 0",
    "class_percent_of_full_scale, 25",
    "class_percent_of_reading, -1",
    "class_percent_of_reading, 25",
    "smallest_levels, 2",
    "smallest_levels, 51",
    "smallest_levels, 5.5",
    "smallest_reference_ratio, 0.5",
    "smallest_reference_ratio, 21",
    "weighting, 1",
    "weighting, '\"none\"'",
    "current_temperature_a, -0.1",
    "current_temperature_a, 101",
    "current_temperature_percent_of_reading, 21",
    "voltage_temperature_v, -0.1",
    "voltage_temperature_percent_of_reading, -1",
    "meter_certificate_months, 0",
    "meter_certificate_months, 61",
    "interval_months, 0",
    "interval_months, 1.5",
    "overdue_factor, 0.9",
    "overdue_factor, 11",
    "overdue_factor, '\"two\"'"
  })
  void shouldRefuseAnImpossibleValueWithFileLineKeyAndValue(String key, String value) {
    String message = refusals.of(HEAD + key + " = " + value + "\n");
    assertTrue(message.startsWith("booth.toml:6: calibration." + key + ": "), message);
    assertTrue(message.contains(value.replace("\"", "")), message);
    assertFalse(message.contains("NaN"), message);
  }

  @Test
  void shouldRefuseAnUnknownKeyAndNameTheNearest() {
    String message = refusals.of(HEAD + "interval_month = 12\n");
    assertTrue(message.startsWith("booth.toml:6: calibration.interval_month"), message);
    assertTrue(message.contains("interval_months"), message);
  }
}
