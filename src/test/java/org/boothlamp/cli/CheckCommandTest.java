package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.health.HealthFault;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a check says of settings and procedures, and of parts that are fine or not. */
class CheckCommandTest {

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
    booth.stickProcedure("S-1", "fill");
    booth.write();
  }

  private CommandRun check(Object... more) {
    Object[] arguments = new Object[more.length + 3];
    System.arraycopy(more, 0, arguments, 3, more.length);
    arguments[0] = "check";
    arguments[1] = "--settings";
    arguments[2] = booth.settings();
    return CommandRun.of(arguments);
  }

  @Test
  void shouldShowWindowsWithTheirCautionBands() {
    String text = check("--settings-only").exits(0).out();
    assertTrue(text.contains("S-1 rev 1, fill (stick, dc+)"), text);
    assertTrue(text.contains("95 to 125 A, amber within 3.00"), text);
    assertTrue(text.contains("note  accuracy"), text);
  }

  @Test
  void shouldFindAProcedureThatCannotBeJudgedAndSayWhere() {
    booth.write(
        booth.procedures().resolve("narrow.toml"),
        """
        id = "N-1"
        revision = "1"
        process = "111"
        current = "dc+"
        source = "cc"
        [[pass]]
        name = "fill"
        amps = [100, 104]
        """);
    CommandRun run = check("--settings-only").exits(2);
    assertTrue(run.out().contains("bad   procedure"), run.out());
    assertTrue(run.out().contains("narrow.toml:8: pass[fill].amps"), run.out());
    assertTrue(run.out().contains("next: make it wider than 5 A"), run.out());
    assertTrue(run.out().contains("good  procedure  S-1"), run.out());
  }

  @Test
  void shouldRefuseSettingsWithFileLineAndKey() {
    booth.extra("[judging]\nsettle_s = \"long\"\n").write();
    CommandRun run = check().exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("booth.toml:"), run.err());
    assertTrue(run.err().contains("judging.settle_s"), run.err());
  }

  @Test
  void shouldListenToTheSourceAndTryTheLamp() {
    String text = check().exits(0).out();
    assertTrue(text.contains("good  source"), text);
    assertTrue(text.contains("5000 pairs/s"), text);
    assertTrue(text.contains("short circuits measured"), text);
    assertTrue(text.contains("good  lamp"), text);
    assertTrue(text.contains("note  log"), text);
  }

  @Test
  void shouldAnswerProgramsOneObjectAFault() {
    List<JsonNode> faults =
        check("-f", "json").exits(0).objects("check").stream()
            .filter(finding -> finding.has("fault"))
            .toList();
    assertEquals(
        Arrays.stream(HealthFault.values()).map(HealthFault::word).toList(),
        faults.stream().map(finding -> finding.get("fault").asText()).toList());
    JsonNode gaps = faults.get(HealthFault.GAPS.ordinal());
    assertEquals("sensors", gaps.get("part").asText());
    assertEquals("good", gaps.get("state").asText());
    assertTrue(gaps.get("judged").asBoolean());
    assertEquals("10 % of the samples of 0.5 s missing", gaps.get("limit").asText());
  }

  @Test
  void shouldLookAtTheBadgeReaderAndItsTable() {
    booth
        .extra(
            "[badge]\nkind = \"keyboard\"\ndevice = \"no-such-reader\"\ntable = \"badges.toml\"\n")
        .write();
    CommandRun none = check("--settings-only").exits(2);
    assertTrue(none.out().contains("badges.toml: there is no such file"), none.out());
    booth.write(folder.resolve("badges.toml"), "[[badge]]\ncode = \"1\"\ntrainee = \"T-04\"\n");
    String text = check("--settings-only").exits(0).out();
    assertTrue(text.contains("badges.toml, 1 badges"), text);
    String reader = check("--listen", 1).exits(1).out();
    assertTrue(reader.contains("no-such-reader is not there"), reader);
  }

  @Test
  void shouldRefuseToListenForEver() {
    CommandRun run = check("--listen", "1000").exits(2);
    assertTrue(run.err().contains("--listen must be from 1 to 300 s, but is 1000"), run.err());
  }

  @Test
  void shouldSayThatAPortIsNotThere() {
    booth
        .source(
            """
            [source]
            kind = "serial"
            port = "/dev/no-such-port"
            [current]
            amps_per_count = 1
            [voltage]
            volts_per_count = 1
            """)
        .write();
    CommandRun run = check().exits(1);
    assertTrue(run.out().contains("bad   source"), run.out());
    assertTrue(run.out().contains("/dev/no-such-port: no such port; plug"), run.out());
  }

  @Test
  void shouldAnswerProgramsOneObjectALine() {
    List<JsonNode> findings = check("--settings-only", "-f", "json").exits(0).objects("check");
    assertEquals("settings", findings.get(0).get("part").asText());
    assertEquals("good", findings.get(0).get("state").asText());
    assertTrue(findings.get(0).get("next_move").isNull());
  }
}
