package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingScaleTest {

  private static final String VOLTAGE = "[voltage]\nvolts_per_count = 0.02\nzero_count = 0\n";

  @TempDir Path folder;

  private SourceException refused(String toml) throws IOException {
    Path file = folder.resolve("run.toml");
    Files.writeString(file, toml);
    SourceException thrown = assertThrows(SourceException.class, () -> RecordingScale.read(file));
    assertEquals(Reason.MALFORMED, thrown.reason());
    return thrown;
  }

  private void assertRefused(String toml, String where, String what) throws IOException {
    SourceException thrown = refused(toml);
    assertEquals(folder.resolve("run.toml") + where, thrown.where());
    assertEquals(what, thrown.what());
    assertTrue(!thrown.nextMove().isEmpty());
  }

  @Test
  void shouldReadWholeNumbersAndFractions() throws IOException {
    Path file = folder.resolve("run.toml");
    Files.writeString(file, "[current]\namps_per_count = 1\nzero_count = -2.5\n" + VOLTAGE);
    assertEquals(
        new PairScale(new ChannelScale(1, -2.5), new ChannelScale(0.02, 0)),
        RecordingScale.read(file));
  }

  @Test
  void shouldReadBackEveryDigitItWrote() {
    Path file = folder.resolve("run.toml");
    PairScale scale =
        new PairScale(new ChannelScale(1.0 / 3, 1e-17), new ChannelScale(-1.234e9, 2047.4999));
    RecordingScale.write(file, scale);
    assertEquals(scale, RecordingScale.read(file));
  }

  @Test
  void shouldLookBesideTheRecording() {
    assertEquals(
        Path.of("a.b", "run.1.toml"), RecordingScale.fileBeside(Path.of("a.b", "run.1.wav")));
    assertEquals(Path.of("run.toml"), RecordingScale.fileBeside(Path.of("run")));
  }

  @Test
  void shouldNameTheLineOfASyntaxError() throws IOException {
    SourceException thrown = refused("[current]\namps_per_count = = 1\n");
    assertEquals(folder.resolve("run.toml") + ", line 2", thrown.where());
  }

  @Test
  void shouldNameAMissingTable() throws IOException {
    assertRefused(VOLTAGE, ", key current", "the table is missing");
  }

  @Test
  void shouldNameAMissingKey() throws IOException {
    assertRefused(
        "\n[current]\namps_per_count = 1\n" + VOLTAGE,
        ", line 2, key current.zero_count",
        "the key is missing");
  }

  @Test
  void shouldNameAnUnknownKey() throws IOException {
    assertRefused(
        "[current]\namps_per_count = 1\nzero_counts = 0\n" + VOLTAGE,
        ", line 3, key current.zero_counts",
        "unknown key");
    assertRefused("rate = 1\n[current]\n" + VOLTAGE, ", line 1, key rate", "unknown key");
  }

  @Test
  void shouldNameAValueOfTheWrongType() throws IOException {
    assertRefused(
        "[current]\namps_per_count = \"1\"\nzero_count = 0\n" + VOLTAGE,
        ", line 2, key current.amps_per_count",
        "must be a finite number, is 1");
    assertRefused(
        "[current]\namps_per_count = inf\nzero_count = 0\n" + VOLTAGE,
        ", line 2, key current.amps_per_count",
        "must be a finite number, is Infinity");
    assertRefused("current = 3\n" + VOLTAGE, ", line 1, key current", "must be a table, is 3");
  }

  @Test
  void shouldNameAnImpossibleScale() throws IOException {
    assertRefused(
        "[current]\namps_per_count = 0.0\nzero_count = 0\n" + VOLTAGE,
        ", line 2, key current.amps_per_count",
        "must not be 0");
  }
}
