package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command replay with runs of a log. */
class LoggedReplayTest {

  @TempDir Path folder;
  private Path log;

  @BeforeEach
  void fillALog() {
    log = folder.resolve("booth.db");
    FilledLog.write(log, "B-07", 3);
  }

  @Test
  void shouldPlayARunBesideAnotherAsLines() {
    CommandRun run = CommandRun.of("replay", "--segment", 1, "--beside", 2, "--log", log).exits(0);
    assertFalse(run.out().contains("\u001B"), run.out());
    assertTrue(run.out().contains("T-0  S-3F-18 r2 fill"), run.out());
    assertTrue(run.out().contains("beside: Inside the window."), run.out());
    assertTrue(run.out().contains("arc energy"), run.out());
  }

  @Test
  void shouldGiveProgramsTwentyFramesASecond() {
    CommandRun run =
        CommandRun.of("replay", "--segment", 1, "--log", log, "--format", "json").exits(0);
    assertEquals(200, run.objects("frame").size());
    assertEquals(1, run.objects("figures").size());
    assertFalse(run.objects("replay").get(0).has("beside"));
  }

  @Test
  void shouldTakeTheLogFromTheSettings() throws Exception {
    BoothFolder booth = new BoothFolder(folder.resolve("booth"));
    Path settings = booth.write();
    booth.log().getParent().toFile().mkdirs();
    FilledLog.write(booth.log(), "B-07", 1);
    CommandRun.of("replay", "--segment", 1, "--settings", settings).exits(0);
  }

  @Test
  void shouldSayWhatToDoWhereThereIsNoSuchRun() {
    String refused = CommandRun.of("replay", "--segment", 99, "--log", log).exits(1).err();
    assertTrue(
        refused.contains("there is no segment 99; boothlamp report lists the runs"), refused);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "replay | give a run of the booth log, --segment ID, or a recording, NAME.wav",
        "replay a.wav --segment 1 | are two things: give one",
        "replay --segment 1 --procedure p.toml | stays judged as it was",
        "replay --segment 1 --pass fill | stays judged as it was",
        "replay --segment 1 --step --speed 2 | two ways to look",
        "replay --segment 1 --speed 0 | --speed must be from 0.01 to 100, but is 0.0",
        "replay --segment 1 --zoom 3 | two moments in seconds such as 3.2..3.4, but is 3",
        "replay --segment 1 --zoom 4..3 | two moments in seconds",
        "replay --beside 1 | --segment"
      })
  void shouldRefuseWhatDoesNotGoTogether(String words, String says) {
    CommandRun run = CommandRun.of((Object[]) words.split(" ")).exits(2);
    assertTrue(run.err().contains(says), run.err());
    assertEquals("", run.out());
  }
}
