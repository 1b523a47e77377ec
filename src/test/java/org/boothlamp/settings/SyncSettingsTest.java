package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.sync.FolderTarget;
import org.boothlamp.sync.PasswordSource;
import org.boothlamp.sync.PostgresTarget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section [sync]. */
class SyncSettingsTest {

  private static final String BOOTH = "booth.id = \"B-07\"\n[source]\nkind = \"simulated\"\n";

  @TempDir Path folder;

  private SyncSettings read(String section) throws Exception {
    Path file = Files.writeString(folder.resolve("booth.toml"), BOOTH + section);
    return BoothSettingsFile.read(file).sync();
  }

  private String refusal(String section) {
    return assertThrows(SettingsException.class, () -> read(section)).getMessage();
  }

  @Test
  void shouldSendNothingUnlessAsked() throws Exception {
    assertNull(read(""));
  }

  @Test
  void shouldReadAFolder() throws Exception {
    SyncSettings sync = read("[sync]\nkind = \"folder\"\nfolder = \"stick\"\nevery_s = 5\n");
    assertEquals(new FolderTarget(folder.resolve("stick")), sync.target());
    assertEquals(5, sync.everySeconds());
  }

  @Test
  void shouldProtectADatabaseUnlessToldOtherwise() throws Exception {
    String text = "[sync]\nkind = \"postgresql\"\nurl = \"postgresql://db.example/school\"\n";
    PostgresTarget target = (PostgresTarget) read(text).target();
    assertEquals(
        new PostgresTarget(
            "db.example", 5432, "school", "booth-B-07", null, null, PostgresTarget.Tls.CHECKED),
        target);
    PostgresTarget plain = (PostgresTarget) read(text + "tls = false\n").target();
    assertEquals(PostgresTarget.Tls.OFF, plain.tls());
  }

  @Test
  void shouldReadWhereThePasswordIs() throws Exception {
    String text = "[sync]\nkind = \"postgresql\"\nurl = \"postgresql://localhost/school\"\n";
    PostgresTarget file = (PostgresTarget) read(text + "password_file = \"secret\"\n").target();
    assertEquals(PasswordSource.ofFile(folder.resolve("secret")), file.password());
    PostgresTarget credential = (PostgresTarget) read(text + "credential = \"db\"\n").target();
    assertEquals(PasswordSource.ofCredential("db"), credential.password());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "kind = \"mail\" | must be one of",
        "kind = \"folder\" | sync.folder: is missing",
        "kind = \"postgresql\" | sync.url: is missing",
        "kind = \"folder\";folder = \"f\";user = \"x\" | belongs to kind",
        "kind = \"postgresql\";url = \"postgresql://u:geheim@h/d\" | no password",
        "kind = \"postgresql\";url = \"http://h/d\" | must be postgresql://",
        "kind = \"postgresql\";url = \"postgresql://h/d\";password = \"geheim\" | password_file",
        "kind = \"postgresql\";url = \"postgresql://h/d\";password_file = \"a\";credential = \"b\""
            + " | remove one of the two",
        "kind = \"postgresql\";url = \"postgresql://h/d\";tls = false;certificate_authority = \"a\""
            + " | has no meaning without TLS"
      })
  void shouldRefuseWhatCannotBeMeant(String section, String why) {
    String message = refusal("[sync]\n" + section.replace(';', '\n') + "\n");
    assertTrue(message.contains(why), message);
    assertFalse(message.contains("geheim"), message);
  }
}
