package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Beads and reference welds from the command line: twenty runs of 10 s and 25.7 kJ. */
class BeadCommandTest {

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void weld() {
    booth = new BoothFolder(folder);
    booth.write();
    FilledLog.write(booth.log(), BoothFolder.BOOTH_ID, 20);
  }

  private CommandRun command(String name, Object... words) {
    Object[] arguments = new Object[words.length + 3];
    arguments[0] = name;
    System.arraycopy(words, 0, arguments, 1, words.length);
    arguments[words.length + 1] = "--settings";
    arguments[words.length + 2] = booth.settings();
    return CommandRun.of(arguments);
  }

  private CommandRun bead(Object... words) {
    return command("bead", words);
  }

  @Test
  void shouldSayWhatFollowsFromALength() {
    String text = bead(17, "--length-mm", 148).exits(0).out();
    assertTrue(text.contains("Run 17 of "), text);
    assertTrue(text.contains("bead 148 mm, travel speed 888 mm/min"), text);
    assertTrue(text.contains("heat input 0.14 kJ/mm (k = 0.8: EN 1011-1"), text);
    assertTrue(text.contains("the procedure sets no limits"), text);
    assertTrue(text.contains("but samples are missing"), text);
    assertEquals(text, bead(17).exits(0).out());
  }

  @Test
  void shouldTakeInchesAndSpeakInTheUnitsOfTheSettings() {
    booth.extra("[screen]\nunits = \"inch-pound\"\n").write();
    String text = bead("last", "--length-in", "5.8", "--note", "no crater").exits(0).out();
    assertTrue(text.contains("Run 20 of "), text);
    assertTrue(text.contains("bead 5.80 in, travel speed 34.8 in/min"), text);
    assertTrue(text.contains("note: no crater"), text);
  }

  @Test
  void shouldAnswerForPrograms() {
    JsonNode bead =
        bead(17, "--length-mm", 148, "--format", "json").exits(0).objects("bead").get(0);
    assertEquals(17, bead.get("run").asInt());
    assertEquals(148, bead.get("bead_length_mm").asDouble());
    assertEquals(0.8 * 25.7 / 148, bead.get("heat_input_kj_per_mm").asDouble(), 1e-6);
    assertEquals("not judged", bead.get("verdict").asText());
  }

  @Test
  void shouldStandInTheReportWithTheNumberToNameItBy() {
    bead(17, "--length-mm", 148).exits(0);
    command("reference", 17, "--words", "even ripples").exits(0);
    String span = "2026-03-01..2026-03-04";
    String text = command("report", span).exits(0).out();
    assertTrue(text.contains("\n   17  "), text);
    assertTrue(text.contains("bead 148 mm"), text);
    assertTrue(text.contains("reference weld: even"), text);
    JsonNode run = command("report", span, "--format", "json").exits(0).objects("run").get(16);
    assertEquals(148, run.get("bead_length_mm").asDouble());
    assertEquals("even ripples", run.get("reference_words").asText());
  }

  @Test
  void shouldMarkAReferenceWeldAndTakeTheMarkBack() {
    String marked = command("reference", "last", "--words", "even ripples").exits(0).out();
    assertTrue(marked.contains("reference weld: even ripples"), marked);
    assertTrue(marked.contains("no bead length was entered"), marked);
    String back = command("reference", 20, "--withdraw").exits(0).out();
    assertFalse(back.contains("reference weld"), back);
    assertTrue(command("reference", 20, "--withdraw").exits(2).err().contains("no mark"));
    assertTrue(
        command("reference", 20, "--withdraw", "--words", "x").exits(2).err().contains("--words"));
  }

  @Test
  void shouldRefuseARunThatIsNotThere() {
    CommandRun run = bead(170, "--length-mm", 148).exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("there is no run 170; the nearest are 19, 20"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "seventeen", "1.5", ""})
  void shouldRefuseWhatIsNoNumberOfARun(String name) {
    assertTrue(bead(name, "--length-mm", 148).exits(2).err().contains("such as 17, or by last"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-148", "1e9", "1480"})
  void shouldRefuseAnImpossibleLength(String length) {
    assertTrue(bead(17, "--length-mm", length).exits(2).err().contains("the unit"));
  }

  @Test
  void shouldAskBackForALengthWithAComma() {
    String err = bead(17, "--length-mm", "148,5").exits(2).err();
    assertTrue(err.contains("did you mean 148.5"), err);
  }

  @Test
  void shouldRefuseTwoUnitsAtOnceAndANoteAlone() {
    bead(17, "--length-mm", 148, "--length-in", 5.8).exits(2);
    assertTrue(bead(17, "--note", "x").exits(2).err().contains("--note goes with a length"));
  }

  @Test
  void shouldMakeNoLogOnlyToFindNoRun() throws Exception {
    Files.delete(booth.log());
    assertTrue(bead(17, "--length-mm", 148).exits(1).err().contains("there is no such file"));
    assertFalse(Files.exists(booth.log()));
  }
}
