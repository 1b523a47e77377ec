package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;

/**
 * Where the newest committed image of each page lies in a write-ahead file, as far as its checksums
 * are right. Layout and checksum: SQLite, "Database File Format", section 4, The Write-Ahead Log.
 * Immutable once read.
 */
final class WriteAheadFrames {

  static final WriteAheadFrames NONE = new WriteAheadFrames(0, 0, Map.of());

  private static final int MAGIC = 0x377f0682;
  private static final int HEADER_BYTES = 32;
  private static final int FRAME_HEADER_BYTES = 24;

  private final int pageSize;
  private final int pages;
  private final Map<Integer, Long> places;

  private WriteAheadFrames(int pageSize, int pages, Map<Integer, Long> places) {
    this.pageSize = pageSize;
    this.pages = pages;
    this.places = places;
  }

  /** Size of a page; 0 if there is no write-ahead file to speak of. */
  int pageSize() {
    return pageSize;
  }

  /** Pages of the log after the last commit; 0 if there was none. */
  int pages() {
    return pages;
  }

  /** Place of a page's image in the file; -1 if it is not in there. */
  long placeOf(int page) {
    return places.getOrDefault(page, -1L);
  }

  /** Reads what is committed in a write-ahead file. */
  static WriteAheadFrames in(Path file) throws IOException {
    if (!Files.exists(file) || Files.size(file) < HEADER_BYTES) {
      return NONE;
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      return new Reading(channel).read();
    }
  }

  /** One pass over the file. */
  private static final class Reading {

    private final FileChannel channel;
    private final Map<Integer, Long> committed = new HashMap<>();
    private final Map<Integer, Long> waiting = new HashMap<>();
    private ByteOrder sumOrder = ByteOrder.LITTLE_ENDIAN;
    private int sum0;
    private int sum1;
    private int pages;

    Reading(FileChannel channel) {
      this.channel = channel;
    }

    WriteAheadFrames read() throws IOException {
      ByteBuffer header = bytes(0, HEADER_BYTES);
      int magic = header.getInt(0);
      int pageSize = header.getInt(8);
      if ((magic & ~1) != MAGIC || !DamagedFile.isPageSize(pageSize)) {
        return NONE;
      }
      sumOrder = (magic & 1) == 1 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
      addToSum(header, 0, HEADER_BYTES - 8);
      if (!isSum(header, HEADER_BYTES - 8)) {
        return NONE;
      }
      readFrames(pageSize, header.getLong(16));
      return pages == 0 ? NONE : new WriteAheadFrames(pageSize, pages, committed);
    }

    private void readFrames(int pageSize, long salts) throws IOException {
      int frameBytes = FRAME_HEADER_BYTES + pageSize;
      for (long place = HEADER_BYTES; place + frameBytes <= channel.size(); place += frameBytes) {
        ByteBuffer frame = bytes(place, frameBytes);
        addToSum(frame, 0, 8);
        addToSum(frame, FRAME_HEADER_BYTES, pageSize);
        if (frame.getLong(8) != salts || !isSum(frame, 16)) {
          return;
        }
        waiting.put(frame.getInt(0), place + FRAME_HEADER_BYTES);
        if (frame.getInt(4) > 0) {
          pages = frame.getInt(4);
          committed.putAll(waiting);
          waiting.clear();
        }
      }
    }

    private ByteBuffer bytes(long place, int count) throws IOException {
      ByteBuffer buffer = ByteBuffer.allocate(count);
      while (buffer.hasRemaining() && channel.read(buffer, place + buffer.position()) >= 0) {
        // until it is full
      }
      return buffer;
    }

    private void addToSum(ByteBuffer buffer, int from, int count) {
      buffer.order(sumOrder);
      for (int at = from; at < from + count; at += 8) {
        sum0 += buffer.getInt(at) + sum1;
        sum1 += buffer.getInt(at + 4) + sum0;
      }
      buffer.order(ByteOrder.BIG_ENDIAN);
    }

    private boolean isSum(ByteBuffer buffer, int at) {
      return buffer.getInt(at) == sum0 && buffer.getInt(at + 4) == sum1;
    }
  }
}
