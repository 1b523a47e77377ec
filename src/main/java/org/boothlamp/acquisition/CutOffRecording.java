package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.tinylog.Logger;

/**
 * Makes a whole recording of one that was being written when the power went: of the pairs that its
 * header counts, which is all but the last second. One without any is deleted.
 */
final class CutOffRecording {

  private static final int DATA_LENGTH_AT = RecordingWriter.HEADER_BYTES - Integer.BYTES;

  private static final int RIFF_LENGTH_AT = 4;

  private CutOffRecording() {}

  static void mend(Path part, Path wav) throws IOException {
    Path sheet = RecordingScale.fileBeside(wav);
    if (!isSound(sheet) || !cutToHeader(part)) {
      Files.deleteIfExists(part);
      Files.deleteIfExists(sheet);
      Logger.warn("recording {} was cut off at its start and is deleted", part);
      return;
    }
    Files.writeString(sheet, "cut_off = true\n", StandardOpenOption.APPEND);
    Files.move(part, wav, StandardCopyOption.ATOMIC_MOVE);
    Logger.warn("recording {} was cut off and is mended: its last second is missing", wav);
  }

  private static boolean isSound(Path sheet) {
    try {
      RecordingScale.readSheet(sheet);
      return true;
    } catch (SourceException damaged) {
      Logger.warn("recording without a scale: {}", damaged.getMessage());
      return false;
    }
  }

  /** False if nothing would be left. The disk may have kept the header and not the last pairs. */
  private static boolean cutToHeader(Path part) throws IOException {
    try (FileChannel file =
        FileChannel.open(part, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      long held = Math.min(dataBytesIn(file), file.size() - RecordingWriter.HEADER_BYTES);
      int dataBytes = (int) (held - Math.floorMod(held, Frames.PAIR_BYTES));
      if (dataBytes <= 0) {
        return false;
      }
      file.truncate(RecordingWriter.HEADER_BYTES + (long) dataBytes);
      putInt(file, RIFF_LENGTH_AT, RecordingWriter.HEADER_BYTES - 2 * Integer.BYTES + dataBytes);
      putInt(file, DATA_LENGTH_AT, dataBytes);
      file.force(true);
      return true;
    }
  }

  private static int dataBytesIn(FileChannel file) throws IOException {
    ByteBuffer length = ByteBuffer.allocate(Integer.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    return file.read(length, DATA_LENGTH_AT) == Integer.BYTES ? length.getInt(0) : 0;
  }

  private static void putInt(FileChannel file, int at, int value) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(Integer.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    file.write(bytes.putInt(value).flip(), at);
  }
}
