package org.boothlamp.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.ReferenceMeter;

/** What is known of the reference meter so far, from options or answers. Confined to one thread. */
final class MeterFacts {

  String make;
  String serial;
  String certificate;
  LocalDate certificateDate;
  Double accuracyPercent;
  Double accuracyCounts;
  Double resolution;

  /** Taken over from options; the meter's own word stands in for a make that is not given. */
  static MeterFacts of(MeterOptions options, String identity) {
    MeterFacts facts = new MeterFacts();
    facts.make = options.make == null ? identity : options.make;
    facts.serial = options.serial;
    facts.certificate = options.certificate;
    facts.certificateDate = options.certificateDate;
    facts.accuracyPercent = options.accuracyPercent;
    facts.accuracyCounts = options.accuracyCounts;
    facts.resolution = options.resolution;
    return facts;
  }

  /** Options that are still needed. */
  List<String> missing() {
    List<String> missing = new ArrayList<>();
    addIfNull(missing, make, "--meter-make");
    addIfNull(missing, serial, "--meter-serial");
    addIfNull(missing, certificate, "--certificate");
    addIfNull(missing, certificateDate, "--certificate-date");
    addIfNull(missing, accuracyPercent, "--accuracy-percent");
    addIfNull(missing, accuracyCounts, "--accuracy-counts");
    addIfNull(missing, resolution, "--resolution");
    return missing;
  }

  private static void addIfNull(List<String> missing, Object value, String option) {
    if (value == null) {
      missing.add(option);
    }
  }

  /**
   * The meter as the record keeps it: with a shunt or clamp before it, its steps are those behind
   * the scale, and the scale's own limit of error is added to the meter's.
   *
   * @throws IllegalArgumentException if a value is impossible
   */
  ReferenceMeter meter(MeterOptions options) {
    if (options.ampsPerVolt == null) {
      return new ReferenceMeter(
          make, serial, certificate, certificateDate, accuracyPercent, accuracyCounts, resolution);
    }
    return new ReferenceMeter(
        make
            + " over "
            + MeasuredValue.figure(options.ampsPerVolt)
            + " A/V (± "
            + MeasuredValue.figure(options.scalePercent)
            + " %)",
        serial,
        certificate,
        certificateDate,
        accuracyPercent + options.scalePercent,
        accuracyCounts,
        resolution * Math.abs(options.ampsPerVolt));
  }
}
