package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.cli.BoothlampCommand;
import org.boothlamp.cli.Terminal;
import org.boothlamp.report.Colour;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.BenchParts;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.FrontEndPlayer;
import org.boothlamp.testing.HeldCalibrationBook;
import org.boothlamp.testing.LoadFollower;
import org.boothlamp.testing.PtyPair;
import org.boothlamp.testing.ScriptedMeter;
import org.boothlamp.testing.SettableLoad;
import org.boothlamp.testing.TypingPerson;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A calibration end to end over two pseudo-terminals: a front end whose clamp shows 1.04 times the
 * current and 3 A more, twenty times faster than life, and a meter that speaks SCPI.
 */
@Tag("quiet")
class CalibrateIT {

  private static final int RATE = 1000;
  private static final double SPEED = 20;
  private static final double AMPS_PER_COUNT = 0.29296875;
  private static final double VOLTS_PER_COUNT = 0.0244140625;

  private static final String POINTS =
      """
      level,direction,reference
      0,rising,
      125,rising,
      250,rising,
      375,rising,
      500,rising,
      375,falling,
      250,falling,
      125,falling,
      0,falling,
      """;

  @TempDir Path folder;

  private final SettableLoad load =
      new SettableLoad(AMPS_PER_COUNT, VOLTS_PER_COUNT).clamp(1.04, 3);
  private final HeldCalibrationBook book = new HeldCalibrationBook();
  private final LoadFollower follower = new LoadFollower(load);
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private PtyPair sensorCable;
  private PtyPair meterCable;
  private FrontEndPlayer player;
  private ScriptedMeter meter;
  private BoothFolder booth;

  @BeforeEach
  void connect() throws IOException {
    sensorCable = new PtyPair(Files.createDirectory(folder.resolve("sensor")));
    meterCable = new PtyPair(Files.createDirectory(folder.resolve("meter")));
    booth =
        new BoothFolder(folder)
            .source(
                """
                [source]
                kind = "serial"
                port = "%s"
                [current]
                amps_per_count = %s
                [voltage]
                volts_per_count = %s
                [calibration]
                current_full_scale_a = 500
                """
                    .formatted(sensorCable.hostSide(), AMPS_PER_COUNT, VOLTS_PER_COUNT));
    booth.write();
    player =
        new FrontEndPlayer(sensorCable.boardSide(), load, RATE)
            .framePairs(100)
            .speed(SPEED)
            .start();
  }

  @AfterEach
  void disconnect() throws IOException {
    player.close();
    if (meter != null) {
      meter.close();
    }
    meterCable.close();
    sensorCable.close();
  }

  private int calibrate(OutputStream out, InputStream in, Object... more) {
    List<String> words = new ArrayList<>();
    Collections.addAll(words, "calibrate", "current", "--settings", booth.settings().toString());
    Collections.addAll(
        words,
        "--technician",
        "K-2",
        "--meter-serial",
        "M-1",
        "--certificate",
        "C-77",
        "--certificate-date",
        LocalDate.now().minusMonths(2).toString(),
        "--accuracy-percent",
        "0.1",
        "--accuracy-counts",
        "2",
        "--resolution",
        "0.1");
    for (Object word : more) {
      words.add(word.toString());
    }
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            80,
            Colour.PLAIN,
            in);
    return BoothlampCommand.commandLine(new BenchParts().book(book).parts(), terminal)
        .execute(words.toArray(String[]::new));
  }

  private int runThrough(Object... more) throws IOException {
    Path points = booth.write(folder.resolve("points.csv"), POINTS);
    List<Object> words =
        new ArrayList<>(List.of("--points", points, "--meter", meterCable.hostSide()));
    Collections.addAll(words, more);
    return calibrate(follower, InputStream.nullInputStream(), words.toArray());
  }

  private void meterSays(Function<String, String> answers) throws IOException {
    meter = new ScriptedMeter(meterCable.boardSide(), answers);
  }

  private String said() {
    return follower.text() + err.toString(StandardCharsets.UTF_8);
  }

  private CalibrationRecord only() {
    assertEquals(1, book.history().records().size());
    return book.history().records().get(0);
  }

  @Test
  void shouldBringTheReplayedTruthBackWithinTheStatedUncertainty() throws IOException {
    meterSays(ScriptedMeter.showing(load::amps));
    assertEquals(0, runThrough("--accept"), this::said);
    CalibrationRecord record = only();
    assertEquals(ScriptedMeter.IDENTITY, record.head().meter().make());
    assertTrue(meter.heard().contains("MEAS:CURR:DC?"), () -> meter.heard().toString());
    assertTrue(said().contains("meter: mean 125 A of "), said());
    assertTrue(record.isAccepted());
    assertReplayed(record);
  }

  /** Runs welded through the same clamp come back as they were, by the calibrated scale. */
  private void assertReplayed(CalibrationRecord record) throws IOException {
    double[] truth = {20, 60, 100, 180, 250, 330, 400, 480};
    Path wav = folder.resolve("runs.wav");
    ChannelScale volts = new ChannelScale(VOLTS_PER_COUNT, 0);
    PairScale scale = Channel.CURRENT.replace(new PairScale(volts, volts), record.finish().scale());
    try (RecordingWriter writer = new RecordingWriter(wav, RATE, scale)) {
      for (double amps : truth) {
        write(writer, 0, 70, RATE);
        write(writer, amps, 24, 3 * RATE);
      }
      write(writer, 0, 70, RATE);
    }
    List<JsonNode> runs = segments(CommandLineRun.of("replay", wav, "--format", "json"));
    assertEquals(truth.length, runs.size());
    for (int i = 0; i < truth.length; i++) {
      double mean = runs.get(i).get("mean_amps").asDouble();
      double stated = record.finish().uncertainty().at(mean);
      System.out.printf(
          Locale.ROOT, "true %.1f A, replayed %.3f A, U %.3f A%n", truth[i], mean, stated);
      assertEquals(truth[i], mean, stated);
    }
  }

  private void write(RecordingWriter writer, double amps, double volts, int pairs) {
    load.amps(amps);
    load.volts(volts);
    short[] current = new short[pairs];
    short[] voltage = new short[pairs];
    for (int i = 0; i < pairs; i++) {
      current[i] = load.current(i);
      voltage[i] = load.voltage(i);
    }
    writer.write(current, voltage, pairs);
  }

  private static List<JsonNode> segments(CommandLineRun replay) throws IOException {
    assertEquals(0, replay.exitCode(), replay.err());
    List<JsonNode> found = new ArrayList<>();
    for (String line : replay.out().lines().toList()) {
      JsonNode node = new ObjectMapper().readTree(line);
      if (node.get("kind").asText().equals("segment")) {
        found.add(node);
      }
    }
    return found;
  }

  @Test
  void shouldReadAShuntThroughAVoltmeterThatIsGarbledNowAndThen() throws IOException {
    AtomicInteger count = new AtomicInteger();
    Function<String, String> voltmeter = ScriptedMeter.showing(() -> load.amps() / 5);
    meterSays(
        command ->
            command.equals("READ?") && count.incrementAndGet() % 9 == 0
                ? "+1.0\u00004\u00FFE\n"
                : voltmeter.apply(command));
    int exitCode =
        runThrough(
            "--accept",
            "--meter-query",
            "READ?",
            "--meter-init",
            "SYST:REM",
            "--meter-scale",
            "5",
            "--meter-scale-percent",
            "0.1",
            "--meter-make",
            "bench voltmeter");
    assertEquals(0, exitCode, this::said);
    assertEquals("SYST:REM", meter.heard().get(0));
    assertTrue(said().contains("answers were none and asked for again"), said());
    assertEquals("bench voltmeter over 5 A/V (± 0.1 %)", only().head().meter().make());
    for (CalibrationPoint point : only().points()) {
      assertEquals(point.level(), point.reference(), 1e-3);
    }
  }

  @Test
  void shouldKeepWhatWasTakenWhenTheMeterOverloadsAndGoOnAfterwards() throws IOException {
    meterSays(ScriptedMeter.showing(() -> load.amps() > 300 ? 9.9e37 : load.amps()));
    assertEquals(1, runThrough("--accept"));
    assertTrue(said().contains("an overload; choose a larger range"), said());
    assertEquals(3, only().points().size());
    meter.close();
    meterCable.cut();
    meterCable.restore();
    meterSays(ScriptedMeter.showing(load::amps));
    assertEquals(0, runThrough("--accept", "--resume"), this::said);
    assertEquals(9, only().points().size());
    assertTrue(only().isAccepted());
  }

  @Test
  void shouldSayThatTheMeterDoesNotAnswer() throws IOException {
    meterSays(command -> null);
    assertEquals(1, runThrough("--accept"));
    assertTrue(said().contains("no answer to *IDN? within 2 s, asked 3 times"), said());
    assertEquals(List.of(), book.history().records());
  }

  @Test
  void shouldTalkWithAPersonWhileSamplesCome() throws IOException {
    TypingPerson person =
        new TypingPerson(
            follower,
            List.of(
                "bench meter",
                "",
                "",
                "0",
                "",
                "124,8",
                "yes",
                "",
                "250000",
                "no",
                "250",
                "back",
                "",
                "249.7",
                "leave"));
    int exitCode = calibrate(person, person.in());
    assertEquals(0, exitCode, this::said);
    assertEquals(0, person.left());
    List<CalibrationPoint> points = only().points();
    assertEquals(4, points.size(), this::said);
    assertEquals(124.8, points.get(1).reference());
    assertTrue(points.get(2).isDiscarded());
    assertEquals(249.7, points.get(3).reference());
    ChannelScale nominal = only().head().nominal();
    assertEquals(1.04 * 250 + 3, nominal.toUnits(points.get(3).meanCounts()), 0.2);
    assertTrue(said().contains("is it in mA?"), said());
  }
}
