package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.LogCounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The simulated shift through the whole path, several times faster than its usual speed. */
class DemoCommandIT {

  @TempDir Path folder;

  @Test
  void shouldPlayTheShiftAndReportWhatTheLogHolds() {
    CommandRun run = CommandRun.of("demo", "--speed", "200", "--keep", folder).exits(0);
    String text = run.out();
    assertTrue(text.contains("Invented, not measured"), text);
    assertTrue(text.contains("3 trainees"), text);
    assertTrue(text.contains("THE CLASS AT A GLANCE"), text);
    assertTrue(text.matches("(?s).*\\n07:\\d\\d:\\d\\d  T-\\d\\d .*"), text);
    Path log = folder.resolve(BoothLog.FILE_NAME);
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      LogCounts counts = reader.counts();
      assertTrue(text.contains(", " + counts.segments() + " runs,"), counts::toString);
      assertEquals(0, counts.openSegments());
    }
    CommandRun again = CommandRun.of("demo", "--keep", folder).exits(2);
    assertTrue(again.err().contains("is there already"), again.err());
  }

  @Test
  void shouldRefuseASpeedOutOfRange() {
    assertTrue(CommandRun.of("demo", "--speed", "0").exits(2).err().contains("from 1 to 200"));
  }
}
