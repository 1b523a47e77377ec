package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Level;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The files that ship in config/ must load, and their comments must tell the truth. */
class ExampleConfigTest {

  private static final Path CONFIG = Path.of("config");
  private static final Path BOOTH = CONFIG.resolve("booth.toml");
  private static final ProcedureFolder PROCEDURES =
      ProcedureFolder.read(CONFIG.resolve("procedures"));

  @TempDir Path folder;

  private static ChannelUncertainties standardAccuracy() {
    return BoothSettingsFile.read(BOOTH).accuracy();
  }

  @Test
  void shouldLoadTheExampleOfARealBooth() {
    BoothSettings settings = BoothSettingsFile.read(BOOTH);
    assertEquals(new SerialSourceSettings("/dev/ttyACM0", 1_000_000), settings.source());
    assertEquals(Set.of(LampKind.SERIAL), settings.lamp().outputs());
    assertEquals(3, settings.shifts().size());
  }

  @Test
  void shouldLoadTheExampleWithoutHardware() {
    BoothSettings settings = BoothSettingsFile.read(CONFIG.resolve("booth-simulated.toml"));
    assertEquals(new SimulatedSourceSettings("stick", 5_000, 1, Pace.REAL_TIME), settings.source());
    assertEquals(Set.of(LampKind.CONSOLE, LampKind.TRACE), settings.lamp().outputs());
    assertEquals(CONFIG.resolve("log/lamp-trace.csv"), settings.lamp().traceFile());
  }

  @ParameterizedTest
  @ValueSource(strings = {"booth.toml", "booth-simulated.toml"})
  void shouldFindTheDefaultPassOfBothExamples(String file) {
    BoothSettings settings = BoothSettingsFile.read(CONFIG.resolve(file));
    ProcedureSettings procedures = settings.procedures();
    LoadedProcedure loaded =
        ProcedureFolder.read(procedures.folder()).find(procedures.defaultProcedure());
    JudgingPlan plan = Procedures.plan(loaded, procedures.defaultPass(), settings.accuracy());
    assertEquals("fill", plan.pass().name());
  }

  /** Every key that is commented out shows its default: with all of them in, nothing changes. */
  @Test
  void shouldShowTrueDefaultsInTheComments() throws IOException {
    List<String> lines = Files.readAllLines(BOOTH);
    int sources = lines.indexOf("# With kind = \"recording\", instead of port and baud:");
    int scales = lines.indexOf("[current]");
    List<String> rest = lines.subList(scales, lines.size());
    String all =
        String.join("\n", lines.subList(0, sources))
            + "\n"
            + rest.stream().map(ExampleConfigTest::uncommented).collect(Collectors.joining("\n"));
    BoothSettings written = BoothSettingsFile.read(Files.writeString(copy(), all));

    BoothSettings byDefault =
        BoothSettingsFile.read(Files.copy(BOOTH, folder.resolve("plain.toml")));
    assertEquals(byDefault.scale(), written.scale());
    assertEquals(byDefault.accuracy(), written.accuracy());
    assertEquals(byDefault.arc(), written.arc());
    assertEquals(byDefault.judging(), written.judging());
    assertEquals(byDefault.procedures(), written.procedures());
    assertEquals(byDefault.lamp().redPulses(), written.lamp().redPulses());
    assertEquals(
        new GpioLampSettings(17, 27, 22, 23, false, GpioProvider.GPIOD, null),
        written.lamp().gpio());
  }

  private Path copy() {
    return folder.resolve("written.toml");
  }

  private static String uncommented(String line) {
    boolean isKey = line.matches("# (\\[[a-z.]+]|[a-z_]+ = .*)");
    return isKey && !line.contains("linuxfs\", ") ? line.substring(2) : line;
  }

  @Test
  void shouldLoadFiveExampleProcedures() {
    assertEquals(List.of(), PROCEDURES.problems());
    assertEquals(
        List.of("F-3G-12", "M-2F-09", "M-TACK", "S-3F-18", "T-2F-24"),
        PROCEDURES.list().stream().map(each -> each.procedure().id()).toList());
  }

  @ParameterizedTest
  @ValueSource(strings = {"F-3G-12", "M-2F-09", "M-TACK", "S-3F-18", "T-2F-24"})
  void shouldLeaveGreenInTheMiddleOfEveryExampleWindow(String id) {
    LoadedProcedure loaded = PROCEDURES.find(id);
    Procedures.check(loaded, standardAccuracy());
    assertFalse(loaded.procedure().passes().isEmpty());
    for (var pass : loaded.procedure().passes()) {
      JudgingPlan plan = Procedures.plan(loaded, pass.name(), standardAccuracy());
      for (int i = 0; i < plan.size(); i++) {
        assertGreenOverHalfTheWidth(plan, i);
      }
    }
  }

  private static void assertGreenOverHalfTheWidth(JudgingPlan plan, int index) {
    Window window = plan.band(index).window();
    assertEquals(Level.GREEN, plan.band(index).level(window.low() + 0.25 * window.width()));
    assertEquals(Level.GREEN, plan.band(index).level(window.low() + 0.75 * window.width()));
  }

  @ParameterizedTest
  @CsvSource({
    "S-3F-18, fill, 95, 125, 20, 26",
    "M-2F-09, fill, 132, 152, 15, 18",
    "T-2F-24, fill, 85, 115, 10, 14",
    "F-3G-12, root, 162, 198, 21.855, 25.145",
  })
  void shouldKeepTheWindowsOfTheExamples(
      String id, String pass, double lowAmps, double highAmps, double lowVolts, double highVolts) {
    var found = PROCEDURES.find(id).procedure().pass(pass);
    assertEquals(new Window(Quantity.AMPS, lowAmps, highAmps), found.window(Quantity.AMPS));
    assertEquals(lowVolts, found.window(Quantity.VOLTS).low(), 1e-9);
    assertEquals(highVolts, found.window(Quantity.VOLTS).high(), 1e-9);
  }
}
