package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Set;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoothSettingsFileTest {

  /** The least a file can say; the source section stands last, so that tests can add to it. */
  private static final String SIMULATED =
      """
      [booth]
      id = "B-07"
      [source]
      kind = "simulated"
      """;

  @TempDir Path folder;

  private Refusals refusals;

  @BeforeEach
  void setUp() {
    refusals = new Refusals(folder, "booth.toml", BoothSettingsFile::read);
  }

  private BoothSettings read(String text) {
    return BoothSettingsFile.read(refusals.write(text));
  }

  @Test
  void shouldFillInEveryDefault() {
    BoothSettings settings = read(SIMULATED);
    ChannelUncertainties accuracy =
        new ChannelUncertainties(
            new ExpandedUncertainty(2.5, 0), new ExpandedUncertainty(0.5, 0), false);
    PairScale scale =
        new PairScale(new ChannelScale(0.29296875, 0), new ChannelScale(0.0244140625, 0));

    assertEquals(folder.resolve("booth.toml"), settings.file());
    assertEquals("B-07", settings.boothId());
    assertEquals(new SimulatedSourceSettings("stick", 5_000, 1, Pace.REAL_TIME), settings.source());
    assertEquals(scale, settings.scale());
    assertEquals(accuracy, settings.accuracy());
    assertEquals(new LampSettings(Set.of(LampKind.CONSOLE), false, null, null), settings.lamp());
    assertEquals(new ArcSettings(15, 0.05, 0.3, 0.3, 8), settings.arc());
    assertEquals(new JudgingSettings(1.0, 1.0, 0.5, 0.3), settings.judging());
    assertEquals(folder.resolve("log"), settings.logFolder());
    assertEquals(
        new ProcedureSettings(folder.resolve("procedures"), "", ""), settings.procedures());
    assertEquals(new ScreenSettings(Language.ENGLISH, Units.METRIC), settings.screen());
    assertEquals(List.of(), settings.shifts());
  }

  @Test
  void shouldReadHowScreensSpeak() {
    BoothSettings settings =
        read(SIMULATED + "[screen]\nlanguage = \"es\"\nunits = \"inch-pound\"\n");
    assertEquals(new ScreenSettings(Language.SPANISH, Units.INCH_POUND), settings.screen());
  }

  @Test
  void shouldReadEverySection() {
    BoothSettings settings =
        read(
            """
            [booth]
            id = "B-07"
            [source]
            kind = "serial"
            port = "/dev/ttyACM0"
            baud = 115200
            lowest_count = 0
            highest_count = 4095
            [current]
            amps_per_count = 0.25
            zero_count = 2047.5
            reversed = true
            [voltage]
            volts_per_count = 0.05
            [accuracy]
            current_a = 1
            current_percent_of_reading = 1.5
            voltage_v = 0.2
            voltage_percent_of_reading = 1
            [arc]
            arc_on_a = 20
            confirm_s = 0.1
            bridge_s = 0.5
            min_segment_s = 0.4
            short_circuit_v = 7
            [averaging]
            average_s = 0.5
            [judging]
            settle_s = 0.6
            hold_s = 0
            excursion_s = 1
            [log]
            folder = "/var/lib/boothlamp"
            [procedures]
            folder = "../procedures"
            default_procedure = "S-1"
            default_pass = "fill"
            """);

    assertEquals(
        new SerialSourceSettings("/dev/ttyACM0", 115_200, new CountRange(0, 4_095)),
        settings.source());
    assertEquals(new ChannelScale(-0.25, 2047.5), settings.scale().current());
    assertEquals(new ChannelScale(0.05, 0), settings.scale().voltage());
    assertEquals(new ExpandedUncertainty(1, 0.015), settings.accuracy().amps());
    assertEquals(new ExpandedUncertainty(0.2, 0.01), settings.accuracy().volts());
    assertEquals(new ArcSettings(20, 0.1, 0.5, 0.4, 7), settings.arc());
    assertEquals(new JudgingSettings(0.5, 0.6, 0, 1), settings.judging());
    assertEquals(Path.of("/var/lib/boothlamp"), settings.logFolder());
    assertEquals(
        new ProcedureSettings(folder.resolveSibling("procedures"), "S-1", "fill"),
        settings.procedures());
  }

  @Test
  void shouldLetARecordingBringItsOwnScale() {
    BoothSettings settings =
        read(
            "booth.id = \"B\"\n[source]\nkind = \"recording\"\nfile = \"a.wav\"\nspeed = \"full\"");
    assertEquals(
        new RecordingSourceSettings(folder.resolve("a.wav"), Pace.FULL), settings.source());
    assertNull(settings.scale());
  }

  @Test
  void shouldReadTheLampOnPinsAndInAFile() {
    BoothSettings settings =
        read(
            SIMULATED
                + """
                [lamp]
                outputs = ["gpio", "trace"]
                red_pulses = true
                [lamp.gpio]
                red = 17
                amber = 27
                green = 22
                heartbeat = 23
                active_low = true
                [lamp.trace]
                file = "lamp.csv"
                """);
    GpioLampSettings gpio = new GpioLampSettings(17, 27, 22, 23, true, GpioProvider.GPIOD, null);
    assertEquals(
        new LampSettings(
            Set.of(LampKind.GPIO, LampKind.TRACE), true, gpio, folder.resolve("lamp.csv")),
        settings.lamp());
  }

  @Test
  void shouldReadPinsOfAKernelFolder() {
    String pins = "[lamp.gpio]\nred = 529\namber = 530\ngreen = 531\nprovider = \"linuxfs\"\n";
    assertEquals(
        new GpioLampSettings(
            529,
            530,
            531,
            GpioLampSettings.NO_PIN,
            false,
            GpioProvider.LINUXFS,
            Path.of("/sys/class/gpio")),
        read(SIMULATED + pins).lamp().gpio());
    assertEquals(
        folder.resolve("pins"),
        read(SIMULATED + pins + "folder = \"pins\"\n").lamp().gpio().folder());
  }

  @Test
  void shouldReadShiftsThatTouchAndCrossMidnight() {
    String shifts =
        """
        [[shift]]
        name = "late"
        start = "15:00"
        end = "23:00"
        [[shift]]
        name = "night"
        start = "23:00"
        end = "07:00"
        [[shift]]
        name = "early"
        start = "07:00"
        end = "15:00"
        """;
    assertEquals(
        List.of(
            new ShiftSettings("late", LocalTime.of(15, 0), LocalTime.of(23, 0)),
            new ShiftSettings("night", LocalTime.of(23, 0), LocalTime.of(7, 0)),
            new ShiftSettings("early", LocalTime.of(7, 0), LocalTime.of(15, 0))),
        read(SIMULATED + shifts).shifts());
  }
}
