package org.boothlamp.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.boothlamp.calibration.CalibrationRecord;

/** The pages of the sample calibrations as they should look. */
final class CalibrationPageResources {

  private CalibrationPageResources() {}

  static CalibrationSheet sheet(String name) {
    CalibrationRecord record =
        Map.of(
                "accepted", CalibrationSamples.accepted(),
                "refused", CalibrationSamples.refused(),
                "withdrawn", CalibrationSamples.withdrawn())
            .get(name);
    return name.equals("refused")
        ? CalibrationSamples.bare(record)
        : CalibrationSamples.sheet(record);
  }

  static String read(String file) {
    try (InputStream in =
        CalibrationPageResources.class.getResourceAsStream("/report/calibration/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
