package org.boothlamp.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Reports as they should look. */
final class ReportResources {

  private ReportResources() {}

  static String read(String file) {
    try (InputStream in = ReportResources.class.getResourceAsStream("/report/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
