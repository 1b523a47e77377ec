package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

class ProceduresTest {

  private static final ExpandedUncertainty AMPS = new ExpandedUncertainty(2.5, 0);
  private static final ExpandedUncertainty VOLTS = new ExpandedUncertainty(0.5, 0);
  private static final ChannelUncertainties STATED = new ChannelUncertainties(AMPS, VOLTS, false);
  private static final ChannelUncertainties FITTED = new ChannelUncertainties(AMPS, VOLTS, true);

  @TempDir Path folder;

  private LoadedProcedure loaded;

  @BeforeEach
  void load() throws IOException {
    String text =
        """
        id = "S-1"
        revision = "1"
        process = "111"
        current = "dc+"
        source = "cc"
        [[pass]]
        name = "root"
        amps = [108, 112]
        volts = [20, 20.8]
        [[pass]]
        name = "fill"
        amps = [95, 125]
        volts = [20, 26]
        arc_s = [5, 5.1]
        """;
    loaded = ProcedureFile.read(Files.writeString(folder.resolve("p.toml"), text));
  }

  private String refusal(Executable planning) {
    SettingsException refused = assertThrows(SettingsException.class, planning);
    return refused.getMessage().replace(folder + "/", "");
  }

  @Test
  void shouldPlanAPassThatIsWideEnough() {
    JudgingPlan plan = Procedures.plan(loaded, "fill", STATED);
    assertEquals("fill", plan.pass().name());
    assertEquals(2, plan.size());
    assertEquals(3, plan.band(0).band(), 1e-12);
  }

  @Test
  void shouldRefuseEveryNarrowWindowWithItsLineAndTheNumbers() {
    assertEquals(
        "p.toml:8: pass[root].amps: pass \"root\": window amps 108 to 112 A is 4"
            + " wide, but the sensor is uncertain by U = 2.5 at either limit and 2 U must be below"
            + " the width; make it wider than 5 A, or calibrate the sensor (its stated U is"
            + " [accuracy] in booth.toml), until U is below 2 A\n"
            + "p.toml:9: pass[root].volts: pass \"root\": window volts 20 to 20.8 V is"
            + " 0.8 wide, but the sensor is uncertain by U = 0.5 at either limit and 2 U"
            + " must be below the width; make it wider than 1 V, or calibrate the sensor (its"
            + " stated U is [accuracy] in booth.toml), until U is below 0.4 V",
        refusal(() -> Procedures.plan(loaded, "root", STATED)));
  }

  @Test
  void shouldCheckAllPassesAtOnce() {
    assertEquals(
        refusal(() -> Procedures.plan(loaded, "root", STATED)),
        refusal(() -> Procedures.check(loaded, STATED)));
  }

  @Test
  void shouldAskForABetterReferenceOnceThereIsACalibration() {
    String message = refusal(() -> Procedures.plan(loaded, "root", FITTED));
    assertEquals(
        "make it wider than 5 A, or calibrate with a better reference meter, until U is below"
            + " 2 A",
        message.lines().findFirst().orElseThrow().split("; ")[1]);
  }

  @Test
  void shouldNameThePassesWhenThereIsNoSuchPass() {
    assertEquals(
        "p.toml: procedure S-1 has no pass \"cap\"; name one of its passes: \"root\", \"fill\"",
        refusal(() -> Procedures.plan(loaded, "cap", STATED)));
    assertEquals(
        "p.toml: procedure S-1 has several passes, but none is named; name one of its passes:"
            + " \"root\", \"fill\"",
        refusal(() -> Procedures.plan(loaded, "", STATED)));
  }

  @Test
  void shouldTakeTheOnlyPassWithoutAName() throws IOException {
    Path file = folder.resolve("one.toml");
    String text = Files.readString(loaded.file());
    Files.writeString(file, text.substring(0, text.lastIndexOf("[[pass]]")));
    assertEquals("root", Procedures.pass(ProcedureFile.read(file), "").name());
  }
}
