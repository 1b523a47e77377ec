package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.acquisition.Recording;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The daemon keeps what was welded; the commands find it again. */
class RawRecordingsIT {

  private static final int RATE = 5_000;

  @TempDir Path folder;

  private BoothFolder booth;
  private Path settings;
  private Path procedure;

  @BeforeEach
  void prepare() throws IOException {
    PairScript script = PairScript.at(RATE).idle(1).arc(110, 23, 2.5).idle(1);
    PairScript.Part part = script.parts().get(0);
    Path wav = folder.resolve("played.wav");
    try (RecordingWriter writer = new RecordingWriter(wav, RATE, script.scale())) {
      writer.write(part.current(), part.voltage(), part.current().length);
    }
    booth = new BoothFolder(folder.resolve("booth"));
    booth.source("[source]\nkind = \"recording\"\nfile = \"" + wav + "\"\n");
    booth.extra("[recordings]\nfree_mb = 0\n");
    procedure = booth.stickProcedure("S-1", "fill");
    settings = booth.defaultProcedure("S-1").write();
  }

  private void weldOnce() {
    command(0, "run");
  }

  private CommandLineRun command(int exitCode, Object... words) {
    List<Object> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--settings", settings));
    CommandLineRun run = CommandLineRun.of(all.toArray());
    assertEquals(exitCode, run.exitCode(), run::err);
    return run;
  }

  private JsonNode object(String kind, Object... words) throws IOException {
    for (String line : command(0, words).out().lines().toList()) {
      JsonNode object = new ObjectMapper().readTree(line);
      if (object.get("kind").asText().equals(kind)) {
        return object;
      }
    }
    throw new AssertionError("no answer of the kind " + kind);
  }

  private JsonNode run() throws IOException {
    return object("run", "report", "--format", "json");
  }

  @Test
  void shouldReplayWhatTheDaemonKeptToTheFiguresOfTheLog() throws IOException {
    weldOnce();
    JsonNode run = run();
    JsonNode replayed =
        object(
            "segment",
            "replay",
            run.get("recording").asText(),
            "--procedure",
            procedure,
            "--format",
            "json");
    double length = replayed.get("end_s").asDouble() - replayed.get("start_s").asDouble();
    assertEquals(run.get("arc_s").asDouble(), length, 1e-9);
    for (String figure : List.of("mean_amps", "mean_volts", "rms_amps", "energy_j", "green_s")) {
      assertEquals(run.get(figure), replayed.get(figure), figure);
    }
    assertEquals(run.get("excursions"), replayed.get("excursions"));
    zoomIntoAndListenTo(run.get("id").asText());
  }

  private void zoomIntoAndListenTo(String id) throws IOException {
    Object[] words = {"replay", "--segment", id, "--zoom", "1..1.2", "--format", "json"};
    JsonNode zoom = object("zoom", words);
    assertEquals(1_000, zoom.get("columns").asInt());
    assertEquals(0, zoom.get("short_circuits").asInt());
    assertEquals(110, object("column", words).get("lowest_amps").asDouble(), 1);
    String chart = command(0, "replay", "--segment", id, "--zoom", "-0.2..0.2").out();
    assertTrue(chart.contains("a column is 5.56 ms"), chart);
    String none = command(1, "replay", "--segment", id, "--zoom", "8..9").err();
    assertTrue(none.contains("the recording goes from -0.500 to 3."), none);
    Path sound = folder.resolve("arc.wav");
    command(0, "replay", "--segment", id, "--sound", sound);
    assertEquals(44 + 2 * RATE * 2.5, Files.size(sound), 2 * RATE * 0.02);
    String there = command(2, "replay", "--segment", id, "--sound", sound).err();
    assertTrue(there.contains("is there already"), there);
  }

  @Test
  void shouldKeepASegmentOnPurposeAndFindItThere() throws IOException {
    weldOnce();
    String id = run().get("id").asText();
    JsonNode kept = object("recording", "record", "--segment", id, "--format", "json");
    assertTrue(kept.get("file").asText().contains("/recordings/kept/segment-"));
    assertEquals(3.5, kept.get("length_s").asDouble(), 0.02);
    assertEquals(kept.get("file"), run().get("recording"));
    Path copy = folder.resolve("copy.wav");
    command(0, "record", "--segment", id, "--out", copy);
    assertEquals(Files.size(copy), Files.size(Path.of(kept.get("file").asText())));
    String refused = command(2, "record", "--segment", id, "--out", copy).err();
    assertTrue(refused.contains("is there already"), refused);
  }

  @Test
  void shouldSayWhatToDoWhereThereIsNoSuchSegmentOrRecording() throws IOException {
    weldOnce();
    String none = command(1, "record", "--segment", 99).err();
    assertTrue(none.contains("has no segment 99; boothlamp report lists the runs"), none);
    Files.delete(Path.of(run().get("recording").asText()));
    assertTrue(run().get("recording").isNull());
    String gone = command(1, "record", "--segment", run().get("id").asText()).err();
    assertTrue(gone.contains("keep_mb in [recordings]"), gone);
  }

  @Test
  void shouldRecordTheSourceWhileNoMonitorRuns() throws IOException {
    Path out = folder.resolve("two.wav");
    JsonNode recorded =
        object("recording", "record", "--seconds", 2, "--out", out, "--format", "json");
    assertEquals(2 * RATE, recorded.get("pairs").asInt());
    assertEquals(2 * RATE, Recording.open(out).pairs());
  }

  @Test
  void shouldNotTakeTheSourceFromARunningMonitor() {
    try (BoothLog held = BoothLog.open(booth.log())) {
      String refused = command(1, "record", "--out", folder.resolve("no.wav")).err();
      assertTrue(refused.contains("another process holds it"), refused);
      assertTrue(refused.contains("record --segment ID"), refused);
      assertEquals(booth.log(), held.path());
    }
  }
}
