package org.boothlamp.report;

/** What has become of a calibration. */
enum CalibrationStatus {
  ACCEPTED("accepted"),
  REFUSED("refused"),
  ABANDONED("given up"),
  UNDER_WAY("under way"),
  WITHDRAWN("withdrawn");

  private final String words;

  CalibrationStatus(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
