package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.boothlog.RetentionRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The section [retention]. */
class RetentionSettingsTest {

  private static final String BOOTH = "booth.id = \"B-07\"\n[source]\nkind = \"simulated\"\n";

  @TempDir Path folder;

  private RetentionRule read(String section) throws Exception {
    Path file = Files.writeString(folder.resolve("booth.toml"), BOOTH + section);
    return BoothSettingsFile.read(file).retention();
  }

  private String refusal(String section) {
    return assertThrows(SettingsException.class, () -> read(section)).getMessage();
  }

  @Test
  void shouldKeepEverythingUnlessAsked() throws Exception {
    assertEquals(RetentionRule.FOR_EVER, read(""));
  }

  @Test
  void shouldReadDaysByKind() throws Exception {
    String section =
        "[retention]\ntraces_days = 30\nruns_days = 730\nevents_days = 90\nsign_ins_days = 1\n";
    assertEquals(new RetentionRule(30, 730, 90, 1), read(section));
  }

  @Test
  void shouldRefuseTracesThatOutliveTheirRuns() {
    String refused = refusal("[retention]\ntraces_days = 31\nruns_days = 30\n");
    assertTrue(refused.contains("retention.traces_days"), refused);
    assertTrue(refused.contains("for a trace goes with its run, but is 31 days"), refused);
  }

  @Test
  void shouldRefuseDaysBelowZero() {
    assertTrue(refusal("[retention]\nruns_days = -1\n").contains("0 to 36500 days"));
  }
}
