package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Recordings through the command, against their truth and against what can be wrong with them. */
class ReplayCommandTest {

  private static final List<String> RECORDINGS = KnownRecording.NAMES;

  private static final List<String> SEGMENT_FIELDS =
      List.of(
          "kind",
          "start_s",
          "end_s",
          "mean_amps",
          "mean_volts",
          "rms_amps",
          "rms_volts",
          "energy_j",
          "mean_power_w",
          "polarity",
          "short_circuits",
          "arc_outs",
          "green_s",
          "amber_s",
          "red_s",
          "settling_s",
          "excursions");

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
  }

  private CommandRun replay(KnownRecording recording) {
    return CommandRun.of(
            "replay",
            booth.recording(recording),
            "--procedure",
            booth.procedure(recording),
            "--format",
            "json")
        .exits(0);
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldFindTheSegmentsThatTheRecordingTrulyHolds(String name) {
    KnownRecording recording = KnownRecording.load(name);
    List<JsonNode> segments = replay(recording).objects("segment");
    assertEquals(recording.segments().size(), segments.size());
    for (int i = 0; i < segments.size(); i++) {
      assertMatches(recording.segments().get(i), segments.get(i));
    }
  }

  private static void assertMatches(Truth truth, JsonNode found) {
    assertEquals(truth.startSeconds(), found.get("start_s").asDouble(), 0.020);
    assertEquals(truth.endSeconds(), found.get("end_s").asDouble(), 0.020);
    assertWithin(truth.meanAmps(), found.get("mean_amps"));
    assertWithin(truth.meanVolts(), found.get("mean_volts"));
    assertWithin(truth.rmsAmps(), found.get("rms_amps"));
    assertWithin(truth.rmsVolts(), found.get("rms_volts"));
    assertWithin(truth.energyJoules(), found.get("energy_j"));
    assertEquals(
        truth.shortCircuits(), found.get("short_circuits").asLong(), 0.03 * truth.shortCircuits());
    double judged =
        found.get("green_s").asDouble()
            + found.get("amber_s").asDouble()
            + found.get("red_s").asDouble()
            + found.get("settling_s").asDouble();
    assertEquals(found.get("end_s").asDouble() - found.get("start_s").asDouble(), judged, 1e-6);
  }

  private static void assertWithin(double expected, JsonNode actual) {
    assertEquals(expected, actual.asDouble(), 0.01 * expected);
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldTellThingsInOrderOfTimeAndASummaryLast(String name) {
    List<JsonNode> objects = replay(KnownRecording.load(name)).objects();
    double last = 0;
    for (JsonNode object : objects.subList(0, objects.size() - 1)) {
      assertTrue(object.get("start_s").asDouble() >= last, () -> objects.toString());
      last = object.get("start_s").asDouble();
    }
    assertEquals("summary", objects.get(objects.size() - 1).get("kind").asText());
  }

  @Test
  void shouldKeepTheFieldNamesThatProgramsReadInTheirOrder() {
    CommandRun run = replay(KnownRecording.load("stick-five-runs"));
    JsonNode segment = run.objects("segment").get(1);
    List<String> names = List.copyOf(segment.properties().stream().map(e -> e.getKey()).toList());
    assertEquals(SEGMENT_FIELDS, names.subList(0, SEGMENT_FIELDS.size()));
    assertEquals("dc+", segment.get("polarity").asText());
    JsonNode excursion = segment.get("excursions").get(0);
    assertEquals("volts", excursion.get("quantity").asText());
    assertEquals("high", excursion.get("side").asText());
    // seconds of an excursion count from the start of the recording, as all others do
    assertTrue(excursion.get("start_s").asDouble() > segment.get("start_s").asDouble());
    assertTrue(excursion.get("end_s").asDouble() < segment.get("end_s").asDouble());
    assertTrue(excursion.get("worst").asDouble() > 26);
    JsonNode touch = run.objects("touch").get(0);
    assertEquals(7.0, touch.get("start_s").asDouble(), 0.02);
    assertEquals(false, touch.get("stuck").asBoolean());
  }

  @Test
  void shouldJudgeNothingWithoutAProcedure() {
    KnownRecording recording = KnownRecording.load("tacks");
    CommandRun run =
        CommandRun.of("replay", booth.recording(recording), "--format", "json").exits(0);
    for (JsonNode segment : run.objects("segment")) {
      assertEquals(0, segment.get("green_s").asDouble());
      assertTrue(segment.get("settling_s").asDouble() > 0);
    }
  }

  @Test
  void shouldTakeTheAccuracyFromTheSettings() {
    KnownRecording recording = KnownRecording.load("short-arc-four-runs");
    Path settings = booth.extra("[accuracy]\ncurrent_a = 11\n").write();
    CommandRun run =
        CommandRun.of(
                "replay",
                booth.recording(recording),
                "--procedure",
                booth.procedure(recording),
                "--settings",
                settings)
            .exits(2);
    assertTrue(run.err().contains("amps 132 to 152 A is 20 wide"), run.err());
    assertTrue(run.err().contains("U = 11 at either limit"), run.err());
  }

  @Test
  void shouldTellAPersonTheSame() {
    KnownRecording recording = KnownRecording.load("stick-five-runs");
    CommandRun run =
        CommandRun.of(
                "replay",
                booth.recording(recording),
                "--procedure",
                booth.procedure(recording),
                "--pass",
                "run")
            .exits(0);
    assertTrue(run.out().contains("5 segments, 3 touches"), run.out());
    assertTrue(run.out().contains("volts high 1x"), run.out());
  }

  @Test
  void shouldNameARecordingThatIsNotThere() {
    CommandRun run = CommandRun.of("replay", folder.resolve("none.wav")).exits(1);
    assertEquals("", run.out());
    assertTrue(run.err().contains("none.wav: no such recording; correct the path"), run.err());
  }

  @Test
  void shouldNameWhatIsWrongWithARecording() throws IOException {
    assertTrue(refusal(wav("mono.wav", 1, 16, 1000)).contains("must have 2 channels, has 1"));
    assertTrue(refusal(wav("thin.wav", 2, 8, 1000)).contains("must have 16 bits a sample, has 8"));
    Path whole = wav("cut.wav", 2, 16, 1000);
    byte[] bytes = Files.readAllBytes(whole);
    Files.write(whole, Arrays.copyOf(bytes, bytes.length - 400));
    assertTrue(
        refusal(whole).contains("its header promises 1000 pairs, the file holds 900"),
        () -> refusal(whole));
    Path text = Files.writeString(folder.resolve("text.wav"), "not sound at all");
    assertTrue(refusal(text).contains("not a WAV file"));
  }

  private static String refusal(Path wav) {
    return CommandRun.of("replay", wav).exits(1).err();
  }

  private Path wav(String name, int channels, int bits, int frames) throws IOException {
    int frameBytes = channels * bits / 8;
    AudioFormat format =
        new AudioFormat(
            bits == 8 ? AudioFormat.Encoding.PCM_UNSIGNED : AudioFormat.Encoding.PCM_SIGNED,
            5000,
            bits,
            channels,
            frameBytes,
            5000,
            false);
    byte[] bytes = new byte[frames * frameBytes];
    Path wav = folder.resolve(name);
    try (AudioInputStream stream =
        new AudioInputStream(new ByteArrayInputStream(bytes), format, frames)) {
      AudioSystem.write(stream, AudioFileFormat.Type.WAVE, wav.toFile());
    }
    Files.writeString(
        folder.resolve(name.replace(".wav", ".toml")),
        "[current]\namps_per_count = 1\nzero_count = 0\n"
            + "[voltage]\nvolts_per_count = 1\nzero_count = 0\n");
    return wav;
  }

  @Test
  void shouldNameAScaleThatIsMissingOrWrong() throws IOException {
    Path wav = wav("a.wav", 2, 16, 1000);
    Path toml = folder.resolve("a.toml");
    Files.writeString(toml, "[current]\namps_per_count = \"x\"\nzero_count = 0\n");
    String refusal = refusal(wav);
    assertTrue(refusal.contains("a.toml"), refusal);
    assertTrue(refusal.contains("amps_per_count"), refusal);
    Files.delete(toml);
    assertTrue(refusal(wav).contains("a.toml"), () -> refusal(wav));
  }

  @Test
  void shouldNamePassesIfTheOneAskedForIsNotThere() {
    KnownRecording recording = KnownRecording.load("tacks");
    CommandRun run =
        CommandRun.of(
                "replay",
                booth.recording(recording),
                "--procedure",
                booth.procedure(recording),
                "--pass",
                "cap")
            .exits(2);
    assertTrue(run.err().contains("has no pass \"cap\""), run.err());
    assertTrue(run.err().contains("\"run\""), run.err());
  }
}
