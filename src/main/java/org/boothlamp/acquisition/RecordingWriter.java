package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.PairScale;

/**
 * Writes pairs to {@code NAME.wav} with {@code NAME.toml} beside it, replacing what was there.
 *
 * <p>The header is set right about once a second and at close, so a recording that was cut off is
 * still readable up to there. A WAV file has no place for missing time: a gap is closed up and
 * counted. Confined to one thread.
 */
public final class RecordingWriter implements AutoCloseable {

  private static final int HEADER_BYTES = 44;

  /** Bytes of the header that follow the RIFF chunk's length. */
  private static final int HEADER_BYTES_AFTER_LENGTH = 36;

  private static final int PCM = 1;
  private static final int CHANNELS = 2;
  private static final int BITS = 16;

  /** A WAV header counts bytes in 32 bits; many tools take them as signed. */
  private static final long MOST_PAIRS =
      (Integer.MAX_VALUE - HEADER_BYTES) / (long) Frames.PAIR_BYTES;

  private final Path wav;
  private final int pairsPerSecond;
  private final FileChannel channel;
  private final ByteBuffer bytes = buffer(SampleBlock.CAPACITY * Frames.PAIR_BYTES);
  private final ByteBuffer header = buffer(HEADER_BYTES);

  private long pairs;
  private long pairsInHeader;
  private long nextIndex;
  private long missingPairs;

  /**
   * Creates both files.
   *
   * @param wav the WAV file; its folder must exist
   * @param pairsPerSecond rate
   * @param scale what the counts mean
   * @throws SourceException if the files cannot be written
   */
  public RecordingWriter(Path wav, int pairsPerSecond, PairScale scale) {
    this.wav = wav;
    this.pairsPerSecond = pairsPerSecond;
    RecordingScale.write(RecordingScale.fileBeside(wav), scale);
    try {
      channel =
          FileChannel.open(
              wav,
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE,
              StandardOpenOption.TRUNCATE_EXISTING);
      writeHeader();
      channel.position(HEADER_BYTES);
    } catch (IOException unwritable) {
      throw failed(unwritable);
    }
  }

  private static ByteBuffer buffer(int capacity) {
    return ByteBuffer.allocateDirect(capacity).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** Appends a block; a gap before it is closed up and counted. */
  public void write(SampleBlock block) {
    if (pairs > 0 && block.firstIndex > nextIndex) {
      missingPairs += block.firstIndex - nextIndex;
    }
    nextIndex = block.firstIndex + block.count;
    write(block.current, block.voltage, block.count);
  }

  /**
   * Appends {@code count} pairs from the front of both arrays.
   *
   * @throws SourceException if they cannot be written
   */
  public void write(short[] current, short[] voltage, int count) {
    if (pairs + count > MOST_PAIRS) {
      throw new SourceException(
          Reason.FAILED,
          wav.toString(),
          "a WAV file holds at most " + MOST_PAIRS + " pairs",
          "go on in a new recording");
    }
    try {
      for (int pair = 0; pair < count; pair++) {
        bytes.putShort(current[pair]).putShort(voltage[pair]);
        if (!bytes.hasRemaining()) {
          writeBytes();
        }
      }
      writeBytes();
      pairs += count;
      if (pairs - pairsInHeader >= pairsPerSecond) {
        writeHeader();
      }
    } catch (IOException unwritable) {
      throw failed(unwritable);
    }
  }

  private void writeBytes() throws IOException {
    bytes.flip();
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
    bytes.clear();
  }

  private void writeHeader() throws IOException {
    int dataBytes = (int) (pairs * Frames.PAIR_BYTES);
    header.clear();
    putTag("RIFF").putInt(HEADER_BYTES_AFTER_LENGTH + dataBytes);
    putTag("WAVE");
    putTag("fmt ").putInt(16).putShort((short) PCM).putShort((short) CHANNELS);
    header.putInt(pairsPerSecond).putInt(pairsPerSecond * Frames.PAIR_BYTES);
    header.putShort((short) Frames.PAIR_BYTES).putShort((short) BITS);
    putTag("data").putInt(dataBytes);
    header.flip();
    while (header.hasRemaining()) {
      channel.write(header, header.position());
    }
    pairsInHeader = pairs;
  }

  private ByteBuffer putTag(String tag) {
    return header.put(tag.getBytes(StandardCharsets.US_ASCII));
  }

  private SourceException failed(IOException cause) {
    return new SourceException(
        Reason.FAILED,
        wav.toString(),
        "the recording could not be written: " + cause.getMessage(),
        "check the folder, its permissions and the free space",
        cause);
  }

  /** Pairs written so far. */
  public long pairs() {
    return pairs;
  }

  /** Pairs missing between the blocks written so far. */
  public long missingPairs() {
    return missingPairs;
  }

  /** Sets the header right and closes; a second call does nothing. */
  @Override
  public void close() {
    if (!channel.isOpen()) {
      return;
    }
    try (channel) {
      writeHeader();
    } catch (IOException unwritable) {
      throw failed(unwritable);
    }
  }
}
