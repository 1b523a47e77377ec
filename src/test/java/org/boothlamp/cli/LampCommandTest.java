package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One signal on the lamp of the settings, here a trace file. */
class LampCommandTest {

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
    booth.write();
  }

  private CommandRun lamp(Object... words) {
    Object[] arguments = new Object[words.length + 3];
    System.arraycopy(words, 0, arguments, 1, words.length);
    arguments[0] = "lamp";
    arguments[words.length + 1] = "--settings";
    arguments[words.length + 2] = booth.settings();
    return CommandRun.of(arguments);
  }

  @ParameterizedTest
  @ValueSource(strings = {"idle", "settling", "green", "amber", "red", "fault"})
  void shouldShowTheSignalAndLeaveTheLampDark(String word) throws IOException {
    lamp(word, "--for", "0.1").exits(0);
    String signals =
        Files.readString(booth.trace())
            .lines()
            .skip(1)
            .map(row -> row.replaceAll(".*,", ""))
            .reduce("", (before, row) -> before + " " + row);
    assertTrue(signals.endsWith(word + " dark"), signals);
  }

  @Test
  void shouldNameTheWordsThatALampShows() {
    CommandRun run = lamp("blue").exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("settling, green, amber, red or fault"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "4000", "NaN"})
  void shouldRefuseATimeThatIsTooShortOrTooLong(String seconds) {
    assertTrue(lamp("red", "--for", seconds).exits(2).err().contains("0.1 to 3600"));
  }
}
