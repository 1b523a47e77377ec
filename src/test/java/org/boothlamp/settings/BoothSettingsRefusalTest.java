package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoothSettingsRefusalTest {

  /** Lines 1 to 4; what a test adds begins on line 5, still inside the source. */
  private static final String SIMULATED =
      """
      [booth]
      id = "B-07"
      [source]
      kind = "simulated"
      """;

  /** Lines 1 to 8; what a test adds begins on line 9. */
  private static final String SERIAL =
      """
      [booth]
      id = "B-07"
      [voltage]
      volts_per_count = 0.05
      [current]
      amps_per_count = 0.25
      [source]
      kind = "serial"
      """;

  private static final String PINS = "[lamp.gpio]\nred = 17\namber = 27\ngreen = 22\n";

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "booth.toml", BoothSettingsFile::read);
  }

  @Test
  void shouldRefuseWhatIsNoSettingsFile() throws IOException {
    String nextMove = "; check the path, or write the settings there after the example booth.toml";
    Path file = folder.resolve("booth.toml");
    assertEquals("booth.toml: there is no such file" + nextMove, refusals.ofFile(file));
    assertEquals("booth.toml: must hold settings, but is empty" + nextMove, refusals.of(""));
    assertEquals(
        "booth.toml:1: must be text, but holds 0x00 at byte 5; check that this is the file you"
            + " meant, and save it as plain UTF-8 text",
        refusals.ofFile(Files.write(file, new byte[] {'R', 'I', 'F', 'F', 0, 1})));
    Path inside = Files.createDirectory(folder.resolve("sub"));
    assertEquals(
        "sub: must be a file, but is a folder; give a file inside it", refusals.ofFile(inside));
  }

  @Test
  void shouldNeedABoothAndASource() {
    assertEquals(
        "booth.toml:1: source.kind: is missing; write e.g. kind = \"serial\" in a section"
            + " [source]\n"
            + "booth.toml:1: booth.id: is missing; write e.g. id = \"B-07\" in a section [booth]",
        refusals.of("[log]\nfolder = \"log\"\n"));
  }

  @Test
  void shouldNeedBothEndsOfTheCountsOrNeither() {
    String port = SERIAL + "port = \"/dev/ttyACM0\"\n";
    assertEquals(
        "booth.toml:10: source.lowest_count: needs highest_count beside it; write both, or neither",
        refusals.of(port + "lowest_count = 0\n"));
    assertEquals(
        "booth.toml:11: source.highest_count: must be above lowest_count = 100, but is 5; write the"
            + " two ends of the converter's counts, such as -2048 and 2047",
        refusals.of(port + "lowest_count = 100\nhighest_count = 5\n"));
    assertEquals(
        "booth.toml:10: source.lowest_count: must be a whole number from -32768 to 32767 counts,"
            + " but is \"low\"; write e.g. lowest_count = -2048",
        refusals.of(port + "lowest_count = \"low\"\nhighest_count = 5\n"));
  }

  @ParameterizedTest
  @CsvSource({"B 07", "'B-07-is-far-too-long'", "''", "Büro"})
  void shouldRefuseABoothIdThatIsNoShortWord(String id) {
    assertEquals(
        "booth.toml:2: booth.id: must be a text in quotes, 1 to 16 letters, digits and hyphens, but"
            + " is \""
            + id
            + "\"; write e.g. id = \"B-07\"",
        refusals.of(SIMULATED.replace("B-07", id)));
  }

  @Test
  void shouldRefuseABaudThatIsNoNumber() {
    assertEquals(
        "booth.toml:10: source.baud: must be a whole number from 1200 to 4000000, but is \"fast\";"
            + " write e.g. baud = 1000000",
        refusals.of(SERIAL + "port = \"/dev/ttyACM0\"\nbaud = \"fast\"\n"));
  }

  @Test
  void shouldNeedAPortAndScalesForASerialLine() {
    assertEquals(
        """
        booth.toml:1: current.amps_per_count: is missing; write e.g. amps_per_count = 0.29296875 in \
        a section [current]
        booth.toml:1: voltage.volts_per_count: is missing; write e.g. volts_per_count = \
        0.0244140625 in a section [voltage]
        booth.toml:3: source.port: is missing; write e.g. port = "/dev/ttyACM0\"""",
        refusals.of(SIMULATED.replace("simulated", "serial")));
  }

  @Test
  void shouldRefuseAKindThatIsNotThere() {
    assertEquals(
        "booth.toml:4: source.kind: must be one of \"serial\", \"spi\", \"i2c\", \"iio\","
            + " \"recording\", \"simulated\", but is \"simulation\"; did you mean simulated?",
        refusals.of(SIMULATED.replace("simulated", "simulation") + "seed = 4\n"));
  }

  @Test
  void shouldRefuseKeysOfAnotherKind() {
    assertEquals(
        "booth.toml:6: source.baud: belongs to kind \"serial\", but kind is \"simulated\"; remove"
            + " it, or put # before it",
        refusals.of(SIMULATED + "seed = 4\nbaud = 9600\n"));
  }

  @Test
  void shouldRefuseAScaleBesideARecording() {
    assertEquals(
        "booth.toml:6: current: has no meaning with kind \"recording\": the file beside the"
            + " recording gives its scale; remove it, or put # before it",
        refusals.of(
            SIMULATED.replace("simulated", "recording")
                + "file = \"a.wav\"\n[current]\namps_per_count = 0.25\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "process = \"mag\"|source.process: must be one of \"stick\", \"short-arc\", \"tig\", but is"
            + " \"mag\"; write e.g. process = \"stick\"",
        "pairs_per_second = 100|source.pairs_per_second: must be a whole number from 200 to 50000,"
            + " but is 100; write e.g. pairs_per_second = 5000",
        "seed = 1.5|source.seed: must be a whole number from 0 to 2147483647, but is 1.5;"
            + " write e.g. seed = 1",
        "speed = 2|source.speed: must be one of \"real-time\", \"full\", but is 2; write e.g. speed"
            + " = \"real-time\"",
        "colour = \"red\"|source.colour: is not known; remove it (known here: kind, process,"
            + " pairs_per_second, seed, speed)",
      })
  void shouldRefuseWrongValuesOfASimulatedSource(String line, String message) {
    assertEquals("booth.toml:5: " + message, refusals.of(SIMULATED + line + "\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "current|amps_per_count = 0|amps_per_count: must be a number from 0.000001 to 10, but is 0;"
            + " write e.g. amps_per_count = 0.29296875",
        "voltage|zero_count = 40000|zero_count: must be a number from -32768 to 32767 counts, but"
            + " is 40000; write e.g. zero_count = 0",
        "voltage|reversed = \"yes\"|reversed: must be true or false, but is \"yes\"; write e.g."
            + " reversed = false",
        "accuracy|current_a = -1|current_a: must be a number from 0 to 100 A, but is -1; write e.g."
            + " current_a = 2.5",
        "accuracy|voltage_percent_of_reading = 51|voltage_percent_of_reading: must be a number from"
            + " 0 to 50 %, but is 51; write e.g. voltage_percent_of_reading = 0",
        "arc|arc_on_a = 4|arc_on_a: must be a number from 5 to 100 A, but is 4; write e.g. arc_on_a"
            + " = 15",
        "arc|confirm_s = 0.055|confirm_s: must be a multiple of 0.01 s, but is 0.055; write e.g."
            + " confirm_s = 0.05",
        "arc|bridge_s = inf|bridge_s: must be a number from 0 to 2 s, but is Infinity; write e.g."
            + " bridge_s = 0.3",
        "arc|min_segment_s = [1]|min_segment_s: must be a number from 0.1 to 5 s, but is [1]; write"
            + " e.g. min_segment_s = 0.3",
        "arc|short_circuit_v = 80|short_circuit_v: must be a number from 2 to 15 V, but is 80;"
            + " write e.g. short_circuit_v = 8",
        "averaging|average_s = 0|average_s: must be a number from 0.1 to 5 s, but is 0; write e.g."
            + " average_s = 1",
        "judging|hold_s = 6|hold_s: must be a number from 0 to 5 s, but is 6; write e.g. hold_s ="
            + " 0.5",
        "judging|excursion_s = 07:00:00|excursion_s: must be a number from 0.1 to 5 s, but is"
            + " 07:00; write e.g. excursion_s = 0.3",
        "log|folder = \"~/log\"|folder: must be a text in quotes, a path that does not begin with"
            + " ~, but is \"~/log\"; write e.g. folder = \"log\"",
        "procedures|default_pass = \"fill\"|default_pass: must stand beside default_procedure, but"
            + " is \"fill\" alone; write default_procedure = \"ID\" beside it, or remove it",
        "procedures|foldr = \"x\"|foldr: is not known; did you mean folder? (known here: folder,"
            + " default_procedure, default_pass)",
      })
  void shouldRefuseWrongValuesInASection(String section, String line, String message) {
    assertEquals(
        "booth.toml:6: " + section + "." + message,
        refusals.of(SIMULATED + "[" + section + "]\n" + line + "\n"));
  }

  @Test
  void shouldRefuseAnUnknownSection() {
    assertEquals(
        "booth.toml:5: jugding: is not known; did you mean judging? (known here: source, log, booth,"
            + " current, voltage, accuracy, calibration, lamp, arc, averaging, judging, retention, recordings, clock, procedures, progress, sync, badge, screen, page, shift)",
        refusals.of(SIMULATED + "[jugding]\nhold_s = 1\n"));
  }

  @Test
  void shouldFindTheLineOfAnUnknownSectionWithinAnother() {
    assertEquals(
        "booth.toml:7: lamps: is not known; did you mean lamp? (known here: source, log, booth,"
            + " current, voltage, accuracy, calibration, lamp, arc, averaging, judging, retention, recordings, clock, procedures, progress, sync, badge, screen, page, shift)",
        refusals.of(SIMULATED + "\n\n[lamps.gpio]\nred = 1\n"));
  }

  @Test
  void shouldExplainWhatASectionIs() {
    assertEquals(
        "booth.toml:1: booth: must be a section, but is \"B-07\"; write [booth] on a line of its own"
            + " and its settings below",
        refusals.of("booth = \"B-07\"\n[source]\nkind = \"simulated\"\n"));
  }

  @Test
  void shouldJudgeOnlyWholeAverages() {
    assertEquals(
        "booth.toml:8: judging.settle_s: must be at least averaging.average_s, 2 s, so that the"
            + " first average judged is a whole one, but is 1 s; write settle_s = 2 in [judging],"
            + " or a shorter average_s in [averaging]",
        refusals.of(SIMULATED + "[averaging]\naverage_s = 2\n[judging]\nsettle_s = 1\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[]|[]",
        "[\"pins\"]|[\"pins\"]",
        "[\"gpio\", \"gpio\"]|[\"gpio\", \"gpio\"]",
        "7|7"
      })
  void shouldRefuseALampShownNowhere(String outputs, String shown) {
    assertEquals(
        "booth.toml:6: lamp.outputs: must be a list of one or more different words out of \"gpio\","
            + " \"serial\", \"console\", \"trace\", but is "
            + shown
            + "; write e.g. outputs = [\"gpio\"]",
        refusals.of(SIMULATED + "[lamp]\noutputs = " + outputs + "\n"));
  }

  @Test
  void shouldRefuseASerialLampWithoutASerialSource() {
    assertEquals(
        "booth.toml:6: lamp.outputs: \"serial\" is the lamp on the board that the samples come"
            + " from, but source.kind is not \"serial\"; take \"serial\" out of the list, or write"
            + " kind = \"serial\" in [source]",
        refusals.of(SIMULATED + "[lamp]\noutputs = [\"serial\"]\n"));
  }

  @Test
  void shouldNeedPinsAndAFileForTheirOutputs() {
    assertEquals(
        """
        booth.toml:5: lamp.gpio.red: is missing; write e.g. red = 17 in a section [lamp.gpio]
        booth.toml:5: lamp.gpio.amber: is missing; write e.g. amber = 27 in a section [lamp.gpio]
        booth.toml:5: lamp.gpio.green: is missing; write e.g. green = 22 in a section [lamp.gpio]
        booth.toml:5: lamp.trace.file: is missing; write e.g. file = "lamp-trace.csv" in a section \
        [lamp.trace]""",
        refusals.of(SIMULATED + "[lamp]\noutputs = [\"gpio\", \"trace\"]\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "heartbeat = 28|heartbeat: must be a whole number from 0 to 27, but is 28; write e.g."
            + " heartbeat = 23",
        "heartbeat = 22|heartbeat: must be a pin of its own, but is 22 like green; give the number"
            + " of the pin it is wired to",
        "provider = \"sysfs\"|provider: must be one of \"gpiod\", \"linuxfs\", but is \"sysfs\";"
            + " write e.g. provider = \"gpiod\"",
        "folder = \"x\"|folder: belongs to provider \"linuxfs\", but provider is \"gpiod\"; remove"
            + " it, or put # before it",
        "active_low = 1|active_low: must be true or false, but is 1; write e.g. active_low ="
            + " false",
      })
  void shouldRefuseWrongPins(String line, String message) {
    assertEquals("booth.toml:9: lamp.gpio." + message, refusals.of(SIMULATED + PINS + line + "\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "a|07:00|24:00|12: shift[a].end: must be a text in quotes, a time of day from \"00:00\" to"
            + " \"23:59\", but is \"24:00\"; write e.g. end = \"15:00\"",
        "a|7:00|15:00|11: shift[a].start: must be a text in quotes, a time of day from \"00:00\" to"
            + " \"23:59\", but is \"7:00\"; write e.g. start = \"07:00\"",
        "a|07:00|07:00|12: shift[a].end: must differ from start, but both are \"07:00\"; correct"
            + " one of them; without any [[shift]] reports go by whole days",
        "b|12:00|13:00|10: shift[b].name: must be given once, but \"b\" is there already; give"
            + " this shift another name",
        "a|21:00|22:30|11: shift[a].start: shifts must not overlap, but \"a\" (21:00 to 22:30)"
            + " overlaps \"b\" (22:00 to 06:00); end one where the other begins",
        "a|05:59|07:00|11: shift[a].start: shifts must not overlap, but \"a\" (05:59 to 07:00)"
            + " overlaps \"b\" (22:00 to 06:00); end one where the other begins",
        "a|12:00|11:00|11: shift[a].start: shifts must not overlap, but \"a\" (12:00 to 11:00)"
            + " overlaps \"b\" (22:00 to 06:00); end one where the other begins",
      })
  void shouldRefuseShiftsThatCannotBe(String name, String start, String end, String problem) {
    String text = SIMULATED + shift("b", "22:00", "06:00") + shift(name, start, end);
    assertEquals("booth.toml:" + problem, refusals.of(text));
  }

  private static String shift(String name, String start, String end) {
    return String.format(
        "[[shift]]%nname = \"%s\"%nstart = \"%s\"%nend = \"%s\"%n", name, start, end);
  }

  @Test
  void shouldRefuseALanguageThatScreensDoNotSpeak() {
    assertEquals(
        "booth.toml:6: screen.language: must be one of \"en\", \"es\", but is \"english\"; write e.g."
            + " language = \"en\"",
        refusals.of(SIMULATED + "[screen]\nlanguage = \"english\"\n"));
  }
}
