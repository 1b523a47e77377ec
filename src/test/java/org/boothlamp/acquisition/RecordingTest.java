package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingTest {

  @TempDir Path folder;

  private Path wav() {
    return folder.resolve("run.wav");
  }

  private SourceException refused(Path wav) {
    SourceException thrown = assertThrows(SourceException.class, () -> Recording.open(wav));
    assertTrue(thrown.where().startsWith(folder.toString()), thrown.where());
    assertTrue(!thrown.nextMove().isEmpty());
    return thrown;
  }

  /** Written by the platform's own WAV writer, not by ours. */
  private Path foreignWav(int bits, int channels, float rate) throws IOException {
    AudioFormat format = new AudioFormat(rate, bits, channels, bits > 8, false);
    byte[] silence = new byte[format.getFrameSize() * 100];
    AudioSystem.write(
        new AudioInputStream(new ByteArrayInputStream(silence), format, 100),
        AudioFileFormat.Type.WAVE,
        wav().toFile());
    return wav();
  }

  @Test
  void shouldOpenWhatTheWriterWrote() {
    RecordingCase.write(wav(), 10_000, 12_345);
    Recording recording = Recording.open(wav());
    assertEquals(10_000, recording.pairsPerSecond());
    assertEquals(12_345, recording.pairs());
    assertEquals(RecordingCase.SCALE, recording.scale());
  }

  @Test
  void shouldWriteTheSameBytesAsThePlatformsWriter() throws IOException {
    byte[] foreign = Files.readAllBytes(foreignWav(16, 2, 5_000));
    RecordingWriter writer = new RecordingWriter(wav(), 5_000, RecordingCase.SCALE);
    writer.write(new short[100], new short[100], 100);
    writer.close();
    writer.close();
    assertArrayEquals(foreign, Files.readAllBytes(wav()));
  }

  @Test
  void shouldOpenAWavOfAnotherWriter() throws IOException {
    foreignWav(16, 2, 5_000);
    RecordingScale.write(folder.resolve("run.toml"), RecordingCase.SCALE);
    assertEquals(100, Recording.open(wav()).pairs());
  }

  @Test
  void shouldLeaveAReadableFileIfTheWriterIsCutOff() throws IOException {
    SampleBlock block = new SampleBlock();
    Path copy = folder.resolve("copy.wav");
    try (RecordingWriter writer = new RecordingWriter(wav(), 1_000, RecordingCase.SCALE)) {
      for (int i = 0; i < 5; i++) {
        RecordingCase.fill(block, PairStream.endless(), i * 500L, 500);
        writer.write(block);
      }
      Files.copy(wav(), copy);
      Files.copy(folder.resolve("run.toml"), folder.resolve("copy.toml"));
    }
    assertEquals(2_000, Recording.open(copy).pairs());
    assertEquals(2_500, Recording.open(wav()).pairs());
  }

  @Test
  void shouldListTheGapsAndKeepTheirPlace() {
    SampleBlock block = new SampleBlock();
    try (RecordingWriter writer = new RecordingWriter(wav(), 1_000, RecordingCase.SCALE)) {
      RecordingCase.fill(block, PairStream.endless(), 300, 100);
      writer.write(block);
      RecordingCase.fill(block, PairStream.endless(), 450, 100);
      writer.write(block);
      assertEquals(250, writer.pairs());
      assertEquals(50, writer.missingPairs());
    }
    assertEquals(250, Recording.open(wav()).pairs());
    assertEquals(List.of(new PairGap(100, 50)), Recording.open(wav()).gaps());
  }

  @Test
  void shouldSayThatAFolderIsNotThere() {
    Path nowhere = folder.resolve("nowhere").resolve("run.wav");
    SourceException thrown =
        assertThrows(
            SourceException.class, () -> new RecordingWriter(nowhere, 1_000, RecordingCase.SCALE));
    assertEquals(Reason.FAILED, thrown.reason());
    assertTrue(thrown.nextMove().contains("folder"), thrown.nextMove());
  }

  @Test
  void shouldRefuseAMissingFile() {
    assertEquals(Reason.MISSING, refused(wav()).reason());
  }

  @Test
  void shouldRefuseWhatIsNotAWav() throws IOException {
    Files.writeString(wav(), "these are no counts");
    assertEquals("not a WAV file", refused(wav()).what());
    Files.write(wav(), new byte[0]);
    assertEquals("not a WAV file", refused(wav()).what());
  }

  @Test
  void shouldRefuseMono() throws IOException {
    assertEquals("must have 2 channels, has 1", refused(foreignWav(16, 1, 5_000)).what());
  }

  @Test
  void shouldRefuseEightBits() throws IOException {
    assertEquals("must have 16 bits a sample, has 8", refused(foreignWav(8, 2, 5_000)).what());
  }

  @Test
  void shouldRefuseARateTooSlowForSlots() throws IOException {
    String what = refused(foreignWav(16, 2, 100)).what();
    assertEquals("must have at least 200 pairs a second, has 100", what);
  }

  @Test
  void shouldSayWhatATruncatedFilePromisedAndHolds() throws IOException {
    RecordingCase.write(wav(), 5_000, 10_000);
    try (FileChannel file = FileChannel.open(wav(), StandardOpenOption.WRITE)) {
      file.truncate(file.size() - 1_001);
    }
    SourceException thrown = refused(wav());
    assertEquals("truncated: its header promises 10000 pairs, the file holds 9749", thrown.what());
  }

  @Test
  void shouldRefuseARecordingWithoutItsScale() throws IOException {
    foreignWav(16, 2, 5_000);
    SourceException thrown = refused(wav());
    assertEquals(Reason.MISSING, thrown.reason());
    assertTrue(thrown.where().endsWith("run.toml"), thrown.where());
    assertTrue(thrown.nextMove().contains("amps_per_count"), thrown.nextMove());
  }
}
