package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a check says of where rows are sent, and of raw recordings. */
class CheckSyncTest {

  @TempDir Path folder;
  private BoothFolder booth;
  private Path stick;

  @BeforeEach
  void setUp() throws IOException {
    booth = new BoothFolder(folder);
    booth.stickProcedure("S-1", "fill");
    stick = Files.createDirectory(folder.resolve("stick"));
  }

  private CommandRun check(String tables, Object... more) {
    booth.extra(tables).write();
    Object[] arguments = new Object[more.length + 5];
    System.arraycopy(more, 0, arguments, 5, more.length);
    arguments[0] = "check";
    arguments[1] = "--settings";
    arguments[2] = booth.settings();
    arguments[3] = "--listen";
    arguments[4] = "1";
    return CommandRun.of(arguments);
  }

  private String toStick() {
    return "[sync]\nkind = \"folder\"\nfolder = \"" + stick + "\"\n";
  }

  @Test
  void shouldSayNothingOfSyncWhereNothingIsSent() {
    assertFalse(check("").exits(0).out().contains(" sync "));
  }

  @Test
  void shouldSayHowMuchWaitsForAFolder() {
    FilledLog.write(booth.log(), BoothFolder.BOOTH_ID, 3);
    String before = check(toStick()).exits(0).out();
    assertTrue(before.contains("good  sync       folder " + stick), before);
    assertTrue(before.contains("nothing was sent yet"), before);
    CommandRun.of("sync", "--settings", booth.settings()).exits(0);
    FilledLog.write(booth.log(), BoothFolder.BOOTH_ID, 2);
    String after = check(toStick()).exits(0).out();
    assertTrue(after.contains("2 segment"), after);
  }

  @Test
  void shouldSayThatTheStickIsNotThereAndWhyTheLastTryFailed() throws IOException {
    FilledLog.write(booth.log(), BoothFolder.BOOTH_ID, 1);
    Files.delete(stick);
    booth.extra(toStick()).write();
    CommandRun.of("sync", "--settings", booth.settings()).exits(1);
    String text = check(toStick()).exits(0).out();
    assertTrue(text.contains("note  sync       the folder " + stick + " is not there"), text);
    assertTrue(text.contains("the last try failed: the folder"), text);
    assertTrue(text.contains("next: plug the stick in"), text);
  }

  @Test
  void shouldFindAPasswordFileThatOthersMayRead() throws IOException {
    Path password = Files.writeString(folder.resolve("password"), "sesame");
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-r--r--"));
    String text =
        check(
                """
                [sync]
                kind = "postgresql"
                url = "postgresql://127.0.0.1:1/boothlamp"
                password_file = "%s"
                """
                    .formatted(password))
            .exits(1)
            .out();
    assertTrue(text.contains("bad   sync       the password file " + password), text);
    assertTrue(text.contains("next: chmod 600 " + password), text);
  }

  @Test
  void shouldFindAServerThatDoesNotAnswer() {
    String text =
        check("[sync]\nkind = \"postgresql\"\nurl = \"postgresql://127.0.0.1:1/boothlamp\"\n")
            .exits(1)
            .out();
    assertTrue(text.contains("postgresql://127.0.0.1:1/boothlamp is not reached"), text);
    assertTrue(text.contains("next: check that the server runs"), text);
  }

  @Test
  void shouldWarnOfRowsThatGoOverTheNetworkInTheClear() {
    String url = "[sync]\nkind = \"postgresql\"\nurl = \"postgresql://db.school.example/b\"\n";
    String plain = check(url + "tls = false\n", "--settings-only").exits(0).out();
    assertTrue(plain.contains("note  sync       tls = false: rows go to db.school.example"), plain);
    assertFalse(check(url, "--settings-only").exits(0).out().contains("tls"));
  }

  @Test
  void shouldSayHowLongRecordingsReachBack() {
    String text = check("").exits(0).out();
    // 200 MB at 4 bytes a pair and 5000 pairs a second
    assertTrue(text.contains("at most 200 MB (2.8 h of arc at 5000 pairs/s)"), text);
    assertFalse(Files.exists(booth.log().getParent()), "a check makes no folder");
  }

  @Test
  void shouldSayThatTheDiskIsTooSmallForTheRecordings() {
    String text = check("[recordings]\nkeep_mb = 10000000\n").exits(0).out();
    assertTrue(text.contains("note  recordings the disk has room for "), text);
    String none = check("[recordings]\nfree_mb = 10000000\n").exits(1).out();
    assertTrue(none.contains("bad   recordings the disk has room for 0.0 MB"), none);
  }

  @Test
  void shouldSayThatTheFolderOfTheRecordingsIsAFile() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    String text = check("[recordings]\nfolder = \"" + file + "\"\n").exits(1).out();
    assertTrue(text.contains("bad   recordings " + file + " cannot be written"), text);
  }

  @Test
  void shouldSayThatNoRecordingsAreKept() {
    String text = check("[recordings]\nkeep_mb = 0\n").exits(0).out();
    assertTrue(text.contains("note  recordings none are kept: keep_mb = 0"), text);
  }
}
