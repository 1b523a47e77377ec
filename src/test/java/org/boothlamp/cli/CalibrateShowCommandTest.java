package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.report.CalibrationSamples;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrateShowCommandTest {

  private final RecordsToShow book =
      new RecordsToShow(
          CalibrationSamples.accepted(),
          CalibrationSamples.refused(),
          CalibrationSamples.withdrawn());

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() throws IOException {
    booth = new BoothFolder(folder);
    booth.write();
    Files.createDirectories(booth.log().getParent());
    Files.createFile(booth.log());
  }

  private CommandRun show(RecordsToShow shown, Object... more) {
    Object[] arguments = new Object[more.length + 4];
    arguments[0] = "calibrate";
    arguments[1] = "show";
    arguments[2] = "--settings";
    arguments[3] = booth.settings();
    System.arraycopy(more, 0, arguments, 4, more.length);
    return CommandRun.with(shown.parts(), arguments);
  }

  @Test
  void shouldShowACalibrationToAPersonAndCloseTheBook() {
    String text = show(book, 7).exits(0).out();
    assertTrue(text.startsWith("Calibration 7 of booth B-07\n"), text);
    assertTrue(text.contains("UNCERTAINTY BUDGET"), text);
    assertTrue(text.contains("ONE-POINT CHECKS"), text);
    assertTrue(book.isClosed());
  }

  @Test
  void shouldShowRefusedAndWithdrawnOnes() {
    assertTrue(show(book, 8).exits(0).out().contains("\nRefused\n"));
    assertTrue(show(book, 9).exits(0).out().contains("does not close"));
  }

  @Test
  void shouldShowACalibrationToAProgram() {
    CommandRun run = show(book, 7, "--format", "json").exits(0);
    assertEquals(1, run.objects("calibration").size());
    assertEquals(13, run.objects("point").size());
    assertTrue(run.objects("point").get(0).has("reference_amps"));
  }

  @Test
  void shouldSayWhichNumbersThereAre() {
    CommandRun run = show(book, 12).exits(1);
    assertEquals("", run.out());
    assertTrue(run.err().contains("no calibration 12; the log has 7 to 9"), run.err());
    assertTrue(book.isClosed());
  }

  @Test
  void shouldSayThatTheBoothWasNeverCalibrated() {
    CommandRun run = show(new RecordsToShow(), 1).exits(1);
    assertTrue(run.err().contains("never calibrated"), run.err());
    assertTrue(
        show(new RecordsToShow(CalibrationSamples.accepted()), 1).err().contains("has only 7"));
  }

  @Test
  void shouldRefuseANumberThatIsNone() {
    CommandRun run = show(book, "seven").exits(2);
    assertTrue(run.err().contains("try: boothlamp calibrate show --help"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"show", "certificate"})
  void shouldExplainItselfOnANarrowScreen(String command) {
    String help = CommandRun.of("calibrate", command, "--help").exits(0).out();
    assertTrue(help.contains("Usage: boothlamp calibrate " + command), help);
    assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
  }

  @Test
  void shouldAskWhichCommandOfCalibrate() {
    CommandRun run = CommandRun.with(book.parts(), "calibrate").exits(2);
    assertTrue(run.err().contains("which of its commands?"), run.err());
    assertTrue(CommandRun.with(book.parts(), "calibrate", "--help").out().contains("certificate"));
  }
}
