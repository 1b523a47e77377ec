package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.acquisition.BadgeEnding;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section [badge] and the table of badges. */
class BadgeSettingsTest {

  private static final String BOOTH = "booth.id = \"B-07\"\n[source]\nkind = \"simulated\"\n";

  @TempDir Path folder;
  private Refusals tables;

  @BeforeEach
  void setUp() {
    tables = new Refusals(folder, "badges.toml", BadgeTableFile::read);
  }

  private BadgeSettings read(String booth, String section) throws Exception {
    Path file = Files.writeString(folder.resolve("booth.toml"), booth + section);
    return BoothSettingsFile.read(file).badge();
  }

  @Test
  void shouldReadNoBadgesUnlessAsked() throws Exception {
    assertNull(read(BOOTH, ""));
  }

  @Test
  void shouldReadAReaderOnASerialLine() throws Exception {
    BadgeSettings usual = read(BOOTH, "[badge]\nkind = \"serial\"\nport = \"/dev/ttyS1\"\n");
    assertEquals(Path.of("/dev/ttyS1"), usual.device());
    assertEquals(new BadgeSettings.SerialLineSettings(9_600, BadgeEnding.LINE), usual.line());
    assertNull(usual.table());
    BadgeSettings other =
        read(
            BOOTH,
            "[badge]\nkind = \"serial\"\nport = \"/dev/ttyS1\"\nbaud = 19200\nending = \"etx\"\n"
                + "table = \"badges.toml\"\n");
    assertEquals(new BadgeSettings.SerialLineSettings(19_200, BadgeEnding.ETX), other.line());
    assertEquals(folder.resolve("badges.toml"), other.table());
  }

  @Test
  void shouldReadAReaderThatTypes() throws Exception {
    BadgeSettings badge =
        read(BOOTH, "[badge]\nkind = \"keyboard\"\ndevice = \"/dev/input/event3\"\n");
    assertEquals(Path.of("/dev/input/event3"), badge.device());
    assertNull(badge.line());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "baud = 9600 | badge.kind: is missing",
        "kind = \"face\" | must be one of",
        "kind = \"serial\" | badge.port: is missing",
        "kind = \"keyboard\" | badge.device: is missing",
        "kind = \"keyboard\";device = \"/dev/input/event3\";baud = 9600 | belongs to kind",
        "kind = \"serial\";port = \"/dev/ttyS1\";device = \"x\" | belongs to kind",
        "kind = \"serial\";port = \"/dev/ttyS1\";ending = \"tab\" | must be one of",
        "kind = \"serial\";port = \"/dev/ttyS1\";tabel = \"x\" | did you mean",
      })
  void shouldRefuseWhatCannotBe(String lines, String why) {
    String message =
        assertThrows(
                SettingsException.class,
                () -> read(BOOTH, "[badge]\n" + lines.replace(';', '\n') + "\n"))
            .getMessage();
    assertTrue(message.contains(why), message);
  }

  @Test
  void shouldRefuseThePortOfTheFrontEnd() {
    String serial =
        "booth.id = \"B-07\"\n[source]\nkind = \"serial\"\nport = \"/dev/ttyS1\"\n"
            + "[current]\namps_per_count = 0.3\n[voltage]\nvolts_per_count = 0.03\n";
    String message =
        assertThrows(
                SettingsException.class,
                () -> read(serial, "[badge]\nkind = \"serial\"\nport = \"/dev/ttyS1\"\n"))
            .getMessage();
    assertTrue(message.contains("must be another than source.port"), message);
  }

  @Test
  void shouldReadWhoseBadgeIsWhose() {
    BadgeTable table =
        BadgeTableFile.read(
            tables.write(
                "[[badge]]\ncode = \"0004711\"\ntrainee = \"T-04\"\n"
                    + "[[badge]]\ncode = \"0009999\"\nsign_out = true\n"));
    assertEquals("T-04", table.traineeOf("0004711"));
    assertEquals("", table.traineeOf("0009999"));
    assertNull(table.traineeOf("4711"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "code = \"1\" | badge[1].trainee: is missing",
        "trainee = \"T-04\" | badge[1].code: is missing",
        "code = \"1 2\";trainee = \"T-04\" | as the reader sends them",
        "code = \"1\";trainee = \"first and last\" | 1 to 16 letters",
        "code = \"1\";sign_out = true;trainee = \"T-04\" | signs nobody in",
        "code = \"1\";trainee = \"T-04\";name = \"x\" | is not known",
        "code = \"1\";trainee = \"T-04\";[[badge]];code = \"1\";trainee = \"T-05\" | said once",
      })
  void shouldRefuseATableThatCannotBe(String lines, String why) {
    String message = tables.of("[[badge]]\n" + lines.replace(';', '\n') + "\n");
    assertTrue(message.contains(why), message);
  }
}
