package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

class ProcedureFolderTest {

  @TempDir Path folder;

  private void write(String file, String id) throws IOException {
    Files.writeString(
        folder.resolve(file),
        """
        id = "%s"
        revision = "1"
        process = "111"
        current = "dc+"
        source = "cc"
        [[pass]]
        name = "fill"
        amps = [95, 125]
        """
            .formatted(id));
  }

  private String refusal(Executable reading) {
    SettingsException refused = assertThrows(SettingsException.class, reading);
    return refused.getMessage().replace(folder.toString(), "FOLDER");
  }

  @Test
  void shouldListProceduresById() throws IOException {
    write("b.toml", "S-1");
    write("a.toml", "S-2");
    List<String> ids =
        ProcedureFolder.read(folder).list().stream().map(each -> each.procedure().id()).toList();
    assertEquals(List.of("S-1", "S-2"), ids);
    assertEquals(folder.resolve("a.toml"), ProcedureFolder.read(folder).find("S-2").file());
  }

  @Test
  void shouldPassOverHiddenFilesAndOtherEndings() throws IOException {
    write("a.toml", "S-1");
    write(".a.toml", "S-1");
    write("a.toml~", "S-1");
    ProcedureFolder read = ProcedureFolder.read(folder);
    assertEquals(1, read.list().size());
    assertEquals(List.of(), read.problems());
  }

  @Test
  void shouldNameBothFilesOfADuplicateId() throws IOException {
    write("a.toml", "S-1");
    write("b.toml", "S-1");
    ProcedureFolder read = ProcedureFolder.read(folder);
    String message =
        "FOLDER/b.toml: id: must be given to one procedure only, but \"S-1\" is also in"
            + " FOLDER/a.toml; change the id in one of the two files, or remove one";
    assertEquals(message, refusal(() -> read.find("S-1")));
    assertEquals(1, read.problems().size());
  }

  @Test
  void shouldFindAProcedureBesideABrokenFile() throws IOException {
    write("good.toml", "S-1");
    Files.writeString(folder.resolve("broken.toml"), "id = S-2\n");
    ProcedureFolder read = ProcedureFolder.read(folder);
    assertEquals("S-1", read.find("S-1").procedure().id());
    assertEquals(folder.resolve("broken.toml"), read.problems().get(0).file());
  }

  @Test
  void shouldSayWhichIdsThereAre() throws IOException {
    write("a.toml", "S-3F-18");
    write("b.toml", "T-2F-24");
    ProcedureFolder read = ProcedureFolder.read(folder);
    assertEquals(
        "FOLDER: no procedure in this folder has the id \"S-3F-19\"; did you mean S-3F-18? Known"
            + " here: S-3F-18, T-2F-24.",
        refusal(() -> read.find("S-3F-19")));
  }

  @Test
  void shouldNameTheFilesInWhichAMissingIdMayStand() throws IOException {
    Files.writeString(folder.resolve("a.toml"), "");
    ProcedureFolder read = ProcedureFolder.read(folder);
    assertEquals(
        "FOLDER: no procedure in this folder has the id \"S-1\"; check the id, or put its file"
            + " there.\n"
            + "FOLDER/a.toml: must hold settings, but is empty; check the path, or write a"
            + " procedure there after one of the examples",
        refusal(() -> read.find("S-1")));
  }

  @Test
  void shouldRefuseAMissingFolderAndAFile() throws IOException {
    String nextMove = "; create it, or correct procedures.folder in booth.toml";
    assertEquals(
        "FOLDER/none: must be a folder with procedure files, but is not there" + nextMove,
        refusal(() -> ProcedureFolder.read(folder.resolve("none"))));
    Path file = Files.writeString(folder.resolve("file"), "");
    assertEquals(
        "FOLDER/file: must be a folder with procedure files, but is a file" + nextMove,
        refusal(() -> ProcedureFolder.read(file)));
  }
}
