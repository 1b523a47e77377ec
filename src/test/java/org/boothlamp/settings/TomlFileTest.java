package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TomlFileTest {

  private static final String CHECK_AND_SAVE =
      "; check that this is the file you meant, and save it as plain UTF-8 text";

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "x.toml", file -> TomlFile.read(new Problems(file), "do this"));
  }

  private String refusalOfBytes(byte[] bytes) throws IOException {
    return refusals.ofFile(Files.write(folder.resolve("x.toml"), bytes));
  }

  @Test
  void shouldSayThatAFileIsMissing() {
    assertEquals(
        "x.toml: there is no such file; do this", refusals.ofFile(folder.resolve("x.toml")));
  }

  @Test
  void shouldRefuseAFolder() {
    assertEquals(
        folder + ": must be a file, but is a folder; give a file inside it",
        refusals.ofFile(folder));
  }

  @Test
  void shouldRefuseADevice() {
    assertEquals(
        "/dev/null: must be a plain file, but is a device or a pipe; do this",
        refusals.ofFile(Path.of("/dev/null")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "# nothing but a comment\n", "\uFEFF"})
  void shouldRefuseAFileWithoutSettings(String text) {
    assertEquals("x.toml: must hold settings, but is empty; do this", refusals.of(text));
  }

  @Test
  void shouldNameLineAndByteOfAZeroByte() throws IOException {
    assertEquals(
        "x.toml:2: must be text, but holds 0x00 at byte 7" + CHECK_AND_SAVE,
        refusalOfBytes("a = 1\n\0b".getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void shouldRefuseTwoByteText() throws IOException {
    String message = refusalOfBytes("a = 1\n".getBytes(StandardCharsets.UTF_16LE));
    assertEquals("x.toml:1: must be text, but holds 0x00 at byte 2" + CHECK_AND_SAVE, message);
  }

  @Test
  void shouldNameLineAndByteOfWhatIsNotUtf8() throws IOException {
    byte[] bytes = "a = 1\nb = \"\u00fc\"\n".getBytes(StandardCharsets.ISO_8859_1);
    assertEquals(
        "x.toml:2: must be UTF-8 text, but holds 0xfc at byte 12" + CHECK_AND_SAVE,
        refusalOfBytes(bytes));
  }

  @Test
  void shouldRefuseTextCutInsideALetter() throws IOException {
    byte[] whole = "a = \"\u00fc".getBytes(StandardCharsets.UTF_8);
    byte[] cut = Arrays.copyOf(whole, whole.length - 1);
    assertEquals(
        "x.toml:1: must be UTF-8 text, but holds 0xc3 at byte 6" + CHECK_AND_SAVE,
        refusalOfBytes(cut));
  }

  @Test
  void shouldRefuseAFileThatIsFarTooLong() throws IOException {
    assertEquals(
        "x.toml: must be at most 262144 bytes long, but is 262145" + CHECK_AND_SAVE,
        refusalOfBytes(new byte[262_145]));
  }

  @Test
  void shouldRefuseBracketsNestedWithoutEnd() {
    assertEquals(
        "x.toml: must be TOML, but has far too many brackets in each other" + CHECK_AND_SAVE,
        refusals.of("a = " + "[".repeat(100_000)));
  }

  @Test
  void shouldShowEachLineThatIsNotToml() {
    String message = refusals.of("a = fast\nb = 2\nc 3\n");
    String[] lines = message.split("\n");
    assertEquals(2, lines.length, message);
    assertTrue(
        lines[0].startsWith("x.toml:1: must be TOML, but is \"a = fast\": Unexpected 'f'"),
        message);
    assertTrue(
        lines[0].endsWith(
            "; put the line right: a section is [name], a setting is name ="
                + " value, text is in quotes"),
        message);
    assertTrue(lines[1].startsWith("x.toml:3: must be TOML, but is \"c 3\": "), message);
  }

  @Test
  void shouldTellOfAKeyGivenTwice() {
    assertEquals(
        "x.toml:3: must be TOML, but is \"a = 2\": a previously defined at line 1, column 1;"
            + " keep one of the two",
        refusals.of("a = 1\nb = 1\na = 2\n"));
  }

  @Test
  void shouldReadTextWithAByteOrderMarkAndWindowsLineEnds() {
    Path file = refusals.write("\uFEFFa = 1\r\nb = 2\r\n");
    Section document = TomlFile.read(new Problems(file), "do this");
    assertEquals(2L, document.value("b"));
    assertEquals(2, document.lineOf("b"));
  }
}
