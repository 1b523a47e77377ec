package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.boothlog.SignIn;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.settings.SettingsException;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a sign-in to what is judged by. */
class SignInDeskTest {

  @TempDir Path folder;
  private final List<String> refusals = new ArrayList<>();
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
    booth.stickProcedure("S-1", "root", "fill");
    booth.stickProcedure("S-2", "single");
  }

  private Assignment after(String trainee, String procedure, String pass) {
    SignInDesk desk = new SignInDesk(BoothSettingsFile.read(booth.write()));
    return desk.after(new SignIn(1, 0, trainee, procedure, pass), refusals::add);
  }

  @Test
  void shouldJudgeByTheProcedureAndPassOfTheSignIn() {
    Assignment assignment = after("T-04", "S-1", "fill");
    assertEquals("T-04", assignment.trainee());
    assertEquals("S-1", assignment.plan().procedure().id());
    assertEquals("fill", assignment.plan().pass().name());
    assertEquals(List.of(), refusals);
  }

  @Test
  void shouldJudgeByTheDefaultAfterASignOut() {
    booth.defaultProcedure("S-2");
    Assignment assignment = after("", "", "");
    assertEquals("", assignment.trainee());
    assertEquals("S-2", assignment.plan().procedure().id());
  }

  @Test
  void shouldJudgeNothingAfterASignOutWithoutADefault() {
    assertSame(Assignment.NONE, after("", "", ""));
  }

  @Test
  void shouldJudgeByTheDefaultIfTheSignInNamesNoProcedure() {
    booth.defaultProcedure("S-2");
    Assignment assignment = after("T-04", "", "");
    assertEquals("T-04", assignment.trainee());
    assertEquals("S-2", assignment.plan().procedure().id());
  }

  @Test
  void shouldKeepTheTraineeAndTellOfAProcedureThatCannotBeUsed() {
    Assignment assignment = after("T-04", "S-9", "");
    assertEquals("T-04", assignment.trainee());
    assertNull(assignment.plan());
    assertEquals(1, refusals.size());
    assertTrue(refusals.get(0).contains("\"S-9\""), refusals::toString);
  }

  @Test
  void shouldReadTheProcedureAgainForEachSignIn() throws IOException {
    SignInDesk desk = new SignInDesk(BoothSettingsFile.read(booth.write()));
    Path file = booth.stickProcedure("S-1", "root", "fill");
    Files.writeString(file, Files.readString(file).replace("revision = \"1\"", "revision = \"2\""));
    Assignment assignment = desk.after(new SignIn(1, 0, "T-04", "S-1", "root"), refusals::add);
    assertEquals("2", assignment.plan().procedure().revision());
  }

  @Test
  void shouldRefuseToStartWithADefaultThatCannotBeUsed() {
    booth.defaultProcedure("S-9");
    SignInDesk desk = new SignInDesk(BoothSettingsFile.read(booth.write()));
    assertThrows(SettingsException.class, desk::nobody);
  }
}
