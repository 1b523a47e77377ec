package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.acquisition.ChannelPair;
import org.boothlamp.acquisition.I2cAddress;
import org.boothlamp.acquisition.I2cDevice;
import org.boothlamp.acquisition.I2cSampling;
import org.boothlamp.acquisition.IioAddress;
import org.boothlamp.acquisition.SpiAddress;
import org.boothlamp.acquisition.SpiDevice;
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
    assertEquals(new SerialSourceSettings("/dev/ttyACM0", 1_000_000, null), settings.source());
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

  @Test
  void shouldLoadTheExampleOfBadges() {
    BadgeTable table = BadgeTableFile.read(CONFIG.resolve("badges.toml"));
    assertEquals("T-04", table.traineeOf("0004711"));
    assertEquals("", table.traineeOf("0009999"));
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
    int sources = indexOfStart(lines, "# With kind = \"spi\"");
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

  private static int indexOfStart(List<String> lines, String start) {
    int index = 0;
    while (!lines.get(index).startsWith(start)) {
      index++;
    }
    return index;
  }

  /** The lines after a kind's heading, without their #, beside scales, are a whole source. */
  private SourceSettings exampleOf(String kind) throws IOException {
    List<String> lines = Files.readAllLines(BOOTH);
    int from = indexOfStart(lines, "# With kind = \"" + kind + "\"");
    int to = from + 1;
    while (lines.get(to).length() > 1) {
      to++;
    }
    String keys =
        lines.subList(from + 1, to).stream()
            .map(line -> line.substring(2))
            .collect(Collectors.joining("\n"));
    String scales = "[current]\namps_per_count = 1\n[voltage]\nvolts_per_count = 1\n";
    String text = "booth.id = \"B\"\n[source]\nkind = \"" + kind + "\"\n" + keys + "\n" + scales;
    return BoothSettingsFile.read(Files.writeString(folder.resolve("kind.toml"), text)).source();
  }

  @Test
  void shouldLoadTheExamplesOfConverters() throws IOException {
    ChannelPair channels = new ChannelPair(0, 1);
    assertEquals(
        new SpiSourceSettings(new SpiAddress(0, 0, 1_000_000), SpiDevice.MCP3208, channels, 5_000),
        exampleOf("spi"));
    assertEquals(
        new I2cSourceSettings(
            new I2cAddress(1, 0x48), I2cDevice.ADS1115, new I2cSampling(channels, 250, 4.096, 860)),
        exampleOf("i2c"));
    assertEquals(
        new IioSourceSettings(
            new IioAddress(Path.of("/"), "mcp3208", "booth-timer"), channels, 1_000),
        exampleOf("iio"));
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
