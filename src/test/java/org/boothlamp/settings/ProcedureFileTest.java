package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProcedureFileTest {

  /** Lines 1 to 5; what a test adds begins on line 6. */
  private static final String HEAD =
      """
      id = "S-1"
      revision = "2"
      process = "111"
      current = "dc+"
      source = "cc"
      """;

  /** Lines 6 and 7 after the head; what a test adds begins on line 8. */
  private static final String PASS = HEAD + "[[pass]]\nname = \"fill\"\n";

  private static final String KNOWN_IN_PASS =
      " (known here: name, amps, volts, power_w, shorts_per_s, heat_input_kj_per_mm, arc_s,"
          + " wire_mm, wire_feed_mm_s, whip)";

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "p.toml", ProcedureFile::read);
  }

  private Procedure read(String text) {
    return ProcedureFile.read(refusals.write(text)).procedure();
  }

  @Test
  void shouldReadEverythingAProcedureCanSay() {
    String all =
        """
        amps = [95, 125.5]
        volts = { nominal = 20, tolerance_percent = 7 }
        power_w = [1000, 3000]
        shorts_per_s = [1, 20]
        heat_input_kj_per_mm = [0.8, 2]
        arc_s = [5, 90]
        wire_mm = 3.2
        wire_feed_mm_s = 100
        whip = true
        """;
    LoadedProcedure loaded = ProcedureFile.read(refusals.write(PASS + all));
    Procedure procedure = loaded.procedure();
    Pass pass = procedure.pass("fill");

    assertEquals("S-1", procedure.id());
    assertEquals("2", procedure.revision());
    assertEquals(Process.MANUAL_METAL_ARC, procedure.process());
    assertEquals(Polarity.DC_PLUS, procedure.current());
    assertEquals(Characteristic.CONSTANT_CURRENT, procedure.source());
    assertTrue(Double.isNaN(procedure.arcOnAmps()));
    assertEquals(new Window(Quantity.AMPS, 95, 125.5), pass.window(Quantity.AMPS));
    assertEquals(new Window(Quantity.VOLTS, 18.6, 21.4), pass.window(Quantity.VOLTS));
    assertEquals(new Window(Quantity.POWER_W, 1000, 3000), pass.window(Quantity.POWER_W));
    assertEquals(new Window(Quantity.SHORTS_PER_S, 1, 20), pass.window(Quantity.SHORTS_PER_S));
    assertEquals(
        new Window(Quantity.HEAT_INPUT_KJ_PER_MM, 0.8, 2),
        pass.window(Quantity.HEAT_INPUT_KJ_PER_MM));
    assertEquals(new Window(Quantity.ARC_S, 5, 90), pass.window(Quantity.ARC_S));
    assertEquals(3.2, pass.wireMm());
    assertEquals(100, pass.wireFeedMmPerS());
    assertEquals(folder.resolve("p.toml"), loaded.file());
    assertEquals(9, loaded.lineOf(pass, Quantity.VOLTS));
  }

  @Test
  void shouldLeaveOutWhatTheFileLeavesOut() {
    Pass pass = read(PASS + "volts = [20, 26]\n").passes().get(0);
    assertNull(pass.window(Quantity.AMPS));
    assertTrue(Double.isNaN(pass.wireMm()));
    assertTrue(Double.isNaN(pass.wireFeedMmPerS()));
  }

  @Test
  void shouldTakeAToleranceOfWholeNumbersToWholeLimits() {
    Pass pass = read(PASS + "amps = { nominal = 110, tolerance_percent = 10 }\n").pass("fill");
    assertEquals(new Window(Quantity.AMPS, 99, 121), pass.window(Quantity.AMPS));
  }

  @Test
  void shouldRefuseAMissingFileAndAnEmptyOne() {
    String nextMove = "; check the path, or write a procedure there after one of the examples";
    assertEquals(
        "p.toml: there is no such file" + nextMove, refusals.ofFile(folder.resolve("p.toml")));
    assertEquals("p.toml: must hold settings, but is empty" + nextMove, refusals.of(""));
  }

  @Test
  void shouldGuessWhatAnUnknownKeyWasMeantToBe() {
    assertEquals(
        "p.toml:9: pass[fill].vots: is not known; did you mean volts?" + KNOWN_IN_PASS,
        refusals.of(PASS + "amps = [95, 125]\nvots = [20, 26]\n"));
  }

  @Test
  void shouldRefuseAnUnknownKeyOutsideThePasses() {
    assertEquals(
        "p.toml:6: welder: is not known; remove it (known here: id, revision, process, current,"
            + " source, arc_on_a, pass)",
        refusals.of(HEAD + "welder = \"x\"\n[[pass]]\nname = \"fill\"\namps = [95, 125]\n"));
  }

  @Test
  void shouldTakeARodForHeldStillUnlessTheProcedureWantsItWhipped() {
    assertFalse(read(PASS + "amps = [95, 125]\n").pass("fill").whip());
    assertTrue(read(PASS + "amps = [95, 125]\nwhip = true\n").pass("fill").whip());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "id = \"S-1\"|id = 7|p.toml:1: id: must be a text in quotes, 1 to 40 characters without"
            + " line breaks and without blanks at either end, but is 7; write e.g. id ="
            + " \"S-3F-18\"",
        "revision = \"2\"|revision = \" 2\"|p.toml:2: revision: must be a text in quotes, 1 to 40"
            + " characters without line breaks and without blanks at either end, but is \" 2\";"
            + " write e.g. revision = \"1\"",
        "process = \"111\"|process = 111|p.toml:3: process: must be one of \"111\", \"114\","
            + " \"121\", \"131\", \"135\", \"136\", \"138\", \"141\", \"142\", \"15\", but is 111;"
            + " write e.g. process = \"111\"",
        "process = \"111\"|process = \"143\"|p.toml:3: process: must be one of \"111\", \"114\","
            + " \"121\", \"131\", \"135\", \"136\", \"138\", \"141\", \"142\", \"15\", but is"
            + " \"143\"; did you mean 141?",
        "current = \"dc+\"|current = \"DCEP\"|p.toml:4: current: must be one of \"dc+\", \"dc-\","
            + " \"ac\", but is \"DCEP\"; write e.g. current = \"dc+\"",
        "source = \"cc\"|source = true|p.toml:5: source: must be one of \"cc\", \"cv\", but is"
            + " true; write e.g. source = \"cc\"",
      })
  void shouldRefuseAWrongValueInTheHead(String good, String bad, String message) {
    assertEquals(message, refusals.of((PASS + "amps = [95, 125]\n").replace(good, bad)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "amps = 110|amps: must be two numbers, [low, high], from 0 to 2000 A, but is 110; write"
            + " amps = [low, high] or amps = { nominal = x, tolerance_percent = 10 }",
        "amps = [95]|amps: must be two numbers, [low, high], from 0 to 2000 A, but is [95]; write"
            + " amps = [low, high] or amps = { nominal = x, tolerance_percent = 10 }",
        "amps = [\"95\", 125]|amps: must be two numbers, [low, high], from 0 to 2000 A, but is"
            + " [\"95\", 125]; write amps = [low, high] or amps = { nominal = x,"
            + " tolerance_percent = 10 }",
        "volts = [20, 260]|volts: must be two numbers, [low, high], from 0 to 150 V, but is"
            + " [20, 260]; write volts = [low, high] or volts = { nominal = x, tolerance_percent ="
            + " 10 }",
        "volts = [20, nan]|volts: must be two numbers, [low, high], from 0 to 150 V, but is"
            + " [20, NaN]; write volts = [low, high] or volts = { nominal = x, tolerance_percent ="
            + " 10 }",
        "amps = [125, 95.5]|amps: low must be below high, but low is 125 and high is 95.5 A; write"
            + " amps = [95.5, 125]",
        "amps = [95, 95]|amps: low must be below high, but low is 95 and high is 95 A; leave room"
            + " between the two",
        "amps = { nominal = 110 }|amps.tolerance_percent: is missing; write e.g. tolerance_percent"
            + " = 10",
        "amps = { nominal = 110, tolerance_percent = 0 }|amps.tolerance_percent: must be a number"
            + " from 0.1 to 100 %, but is 0; write e.g. tolerance_percent = 10",
        "amps = { nominal = \"110\", tolerance_percent = 5 }|amps.nominal: must be a number from 0"
            + " to 2000 A, but is \"110\"; write e.g. nominal = 200",
        "amps = { nominal = 0, tolerance_percent = 5 }|amps.nominal: must be above 0, but is 0;"
            + " write the middle of the limits",
      })
  void shouldRefuseALimitThatIsNone(String line, String message) {
    assertEquals("p.toml:8: pass[fill]." + message, refusals.of(PASS + line + "\n"));
  }

  @Test
  void shouldRefuseAWireNobodyCouldHold() {
    assertEquals(
        "p.toml:9: pass[fill].wire_mm: must be a number from 0.3 to 10 mm, but is 32; write e.g."
            + " wire_mm = 1.2\n"
            + "p.toml:10: pass[fill].wire_feed_mm_s: must be a number from 1 to 1000 mm/s, but is"
            + " \"fast\"; write e.g. wire_feed_mm_s = 100",
        refusals.of(PASS + "amps = [95, 125]\nwire_mm = 32\nwire_feed_mm_s = \"fast\"\n"));
  }

  @Test
  void shouldNeedAmpsOrVoltsInEachPass() {
    assertEquals(
        "p.toml:6: pass[fill].amps: is missing: a pass needs a limit of amps, of volts, or of"
            + " both; write e.g. amps = [95, 125] or volts = [20, 26]",
        refusals.of(PASS + "arc_s = [5, 90]\n"));
  }

  @Test
  void shouldNeedAPass() {
    String nextMove =
        "; write [[pass]] on a line of its own, and below it e.g. name = \"fill\", amps = [95, 125]";
    assertEquals(
        "p.toml:1: pass: is missing: a procedure needs at least one pass" + nextMove,
        refusals.of(HEAD));
    assertEquals(
        "p.toml:6: pass: is missing: a procedure needs at least one pass" + nextMove,
        refusals.of(HEAD + "pass = []\n"));
  }

  @Test
  void shouldExplainTheTwoBracketsOfAPass() {
    assertEquals(
        "p.toml:6: pass: must be repeated sections, but is a section; write [[pass]] on a line of"
            + " its own and its settings below",
        refusals.of(HEAD + "[pass]\nname = \"fill\"\namps = [95, 125]\n"));
  }

  @Test
  void shouldRefuseTwoPassesOfTheSameName() {
    assertEquals(
        "p.toml:10: pass[fill].name: must be given once, but \"fill\" is there already; give this"
            + " pass another name, or remove one of the two",
        refusals.of(PASS + "amps = [95, 125]\n[[pass]]\nname = \"fill\"\namps = [85, 110]\n"));
  }

  @Test
  void shouldCountAPassThatHasNoName() {
    assertEquals(
        "p.toml:9: pass[2].name: is missing; write e.g. name = \"fill\"",
        refusals.of(PASS + "amps = [95, 125]\n[[pass]]\namps = [85, 110]\n"));
  }

  @Test
  void shouldLetOnlyTigGoBelowFifteenAmps() {
    String low = HEAD + "arc_on_a = 8\n[[pass]]\nname = \"fill\"\namps = [85, 115]\n";
    assertEquals(
        "p.toml:6: arc_on_a: must be at least 15 A, but is 8 with process 111 (only TIG, 141 and"
            + " 142, may go down to 5 A); write arc_on_a = 15, or leave it out",
        refusals.of(low));
    assertEquals(8, read(low.replace("111", "141")).arcOnAmps());
    assertEquals(8, read(low.replace("111", "142")).arcOnAmps());
  }

  @ParameterizedTest
  @CsvSource({"4.9", "101"})
  void shouldRefuseAnImpossibleArcOnCurrent(String amps) {
    assertEquals(
        "p.toml:6: arc_on_a: must be a number from 5 to 100 A, but is "
            + amps
            + "; write e.g. arc_on_a = 15",
        refusals.of(
            HEAD + "arc_on_a = " + amps + "\n[[pass]]\nname = \"fill\"\namps = [85, 115]\n"));
  }

  @Test
  void shouldTellEverythingThatIsWrongInLineOrder() {
    assertEquals(
        """
        p.toml:1: id: is missing; write e.g. id = "S-3F-18"
        p.toml:1: revision: is missing; write e.g. revision = "1"
        p.toml:1: current: is missing; write e.g. current = "dc+"
        p.toml:1: source: is missing; write e.g. source = "cc"
        p.toml:1: revison: is not known; did you mean revision? (known here: id, revision, \
        process, current, source, arc_on_a, pass)
        p.toml:2: process: must be one of "111", "114", "121", "131", "135", "136", "138", "141", \
        "142", "15", but is "stick"; write e.g. process = "111"
        p.toml:5: pass[root].amps: low must be below high, but low is 110 and high is 85 A; write \
        amps = [85, 110]""",
        refusals.of(
            """
            revison = "1"
            process = "stick"
            [[pass]]
            name = "root"
            amps = [110, 85]
            """));
  }
}
