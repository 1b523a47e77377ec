package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/**
 * Writes pairs to {@code NAME.wav} with {@code NAME.toml} beside it, replacing what was there.
 *
 * <p>The header is set right about once a second and at close, so a recording that was cut off is
 * still readable up to there. A WAV file has no place for missing time: a gap holds the counts of
 * zero, and the file beside it lists it. Confined to one thread.
 */
public final class RecordingWriter implements AutoCloseable {

  static final int HEADER_BYTES = 44;

  /** Bytes of the header that follow the RIFF chunk's length. */
  private static final int HEADER_BYTES_AFTER_LENGTH = 36;

  private static final int PCM = 1;
  private static final int CHANNELS = 2;
  private static final int BITS = 16;

  /** A WAV header counts bytes in 32 bits; many tools take them as signed. */
  private static final long MOST_PAIRS =
      (Integer.MAX_VALUE - HEADER_BYTES) / (long) Frames.PAIR_BYTES;

  private final Path wav;
  private final Path sheetFile;
  private final RecordingSheet sheet;
  private final List<PairGap> gaps = new ArrayList<>();
  private final int pairsPerSecond;
  private final FileChannel channel;
  private final ByteBuffer bytes = buffer(SampleBlock.CAPACITY * Frames.PAIR_BYTES);
  private final ByteBuffer header = buffer(HEADER_BYTES);

  private long pairs;
  private long pairsInHeader;
  private long nextIndex;
  private long missingPairs;
  private int gapsInSheet;

  /**
   * Creates both files.
   *
   * @param wav the WAV file; its folder must exist
   * @param pairsPerSecond rate
   * @param scale what the counts mean
   * @throws SourceException if the files cannot be written
   */
  public RecordingWriter(Path wav, int pairsPerSecond, PairScale scale) {
    this(wav, RecordingScale.fileBeside(wav), pairsPerSecond, RecordingSheet.of(scale));
  }

  /** The same with the file beside it at another place, and with more in it. */
  RecordingWriter(Path wav, Path sheetFile, int pairsPerSecond, RecordingSheet sheet) {
    this.wav = wav;
    this.sheetFile = sheetFile;
    this.sheet = sheet;
    this.pairsPerSecond = pairsPerSecond;
    sheet.write(sheetFile);
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

  /** Appends a block, and before it the gap since the last one. */
  public void write(SampleBlock block) {
    if (pairs > 0 && block.firstIndex > nextIndex) {
      writeGap(block.firstIndex - nextIndex);
    }
    nextIndex = block.firstIndex + block.count;
    write(block.current, block.voltage, block.count);
  }

  /** Appends pairs that never arrived. */
  void writeGap(long missing) {
    gaps.add(new PairGap(pairs, missing));
    missingPairs += missing;
    short[] current = new short[SampleBlock.CAPACITY];
    short[] voltage = new short[SampleBlock.CAPACITY];
    Arrays.fill(current, zero(sheet.scale().current()));
    Arrays.fill(voltage, zero(sheet.scale().voltage()));
    for (long left = missing; left > 0; left -= SampleBlock.CAPACITY) {
      write(current, voltage, (int) Math.min(left, SampleBlock.CAPACITY));
    }
  }

  private static short zero(ChannelScale scale) {
    long count = Math.round(scale.zeroCount());
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, count));
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

  /** Gaps first: what the header counts must not hold one that is not listed. */
  private void writeHeader() throws IOException {
    if (gapsInSheet < gaps.size()) {
      sheet.withGaps(gaps).write(sheetFile);
      gapsInSheet = gaps.size();
    }
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

  /** Pairs written so far, gaps inside. */
  public long pairs() {
    return pairs;
  }

  /** Pairs missing between the blocks written so far. */
  public long missingPairs() {
    return missingPairs;
  }

  /** Sets the header right, waits until all of it is on the disk, and closes. */
  void finish() {
    try (channel) {
      writeHeader();
      channel.force(true);
    } catch (IOException unwritable) {
      throw failed(unwritable);
    }
  }

  /** Closes without setting anything right; for a recording that is given up. */
  void abandon() {
    try {
      channel.close();
    } catch (IOException unwritable) {
      throw failed(unwritable);
    }
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
