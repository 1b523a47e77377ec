package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SignIn;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who welds, to what: rules of the command, and what it writes. */
class SignInCommandTest {

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
    booth.stickProcedure("S-1", "root", "fill");
    booth.stickProcedure("S-2", "single");
    booth.write();
  }

  private CommandRun signIn(Object... words) {
    Object[] arguments = new Object[words.length + 3];
    System.arraycopy(words, 0, arguments, 1, words.length);
    arguments[0] = "sign-in";
    arguments[words.length + 1] = "--settings";
    arguments[words.length + 2] = booth.settings();
    return CommandRun.of(arguments);
  }

  private SignIn latest() {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.latestSignIn();
    }
  }

  @Test
  void shouldWriteWhoWeldsToWhat() {
    CommandRun run = signIn("T-04", "--procedure", "S-1", "--pass", "fill").exits(0);
    assertTrue(run.out().contains("95 to 125 A, 20 to 26 V"), run.out());
    assertEquals("T-04", latest().trainee());
    assertEquals("S-1", latest().procedureId());
    assertEquals("fill", latest().pass());
  }

  @Test
  void shouldNotAskForThePassIfThereIsOnlyOne() {
    signIn("T-04", "--procedure", "S-2").exits(0);
    assertEquals("single", latest().pass());
  }

  @Test
  void shouldAskForThePassIfThereAreSeveral() {
    CommandRun run = signIn("T-04", "--procedure", "S-1").exits(2);
    assertTrue(run.err().contains("\"root\", \"fill\""), run.err());
    assertFalse(Files.exists(booth.log()));
  }

  @Test
  void shouldTakeTheDefaultProcedureOfTheSettings() {
    booth.defaultProcedure("S-2").write();
    signIn("T-04").exits(0);
    assertEquals("S-2", latest().procedureId());
  }

  @Test
  void shouldAskForAProcedureIfTheSettingsNameNone() {
    CommandRun run = signIn("T-04").exits(2);
    assertTrue(run.err().contains("--procedure ID"), run.err());
  }

  @Test
  void shouldNameTheProceduresItKnowsIfTheOneAskedForIsNotThere() {
    CommandRun run = signIn("T-04", "--procedure", "S-9").exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("S-1, S-2"), run.err());
  }

  @Test
  void shouldSignOut() {
    signIn("T-04", "--procedure", "S-2").exits(0);
    signIn("--out").exits(0);
    assertTrue(latest().isSignOut());
  }

  @Test
  void shouldRefuseToSignSomebodyOutByCode() {
    assertTrue(signIn("T-04", "--out").exits(2).err().contains("leave TRAINEE away"));
  }

  @Test
  void shouldAskWhoSignsIn() {
    assertTrue(signIn().exits(2).err().contains("who signs in?"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "two words", "T-04!", "a-code-that-is-too-long"})
  void shouldRefuseWhatIsNoCode(String code) {
    CommandRun run = signIn(code, "--procedure", "S-2").exits(2);
    assertTrue(run.err().contains("choose one such as T-04"), run.err());
  }
}
