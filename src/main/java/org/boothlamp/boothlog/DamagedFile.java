package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * The pages of a damaged log as they were last committed, read without SQLite, which gives a whole
 * file up for one page. Never writes. Confined to one thread.
 */
final class DamagedFile implements AutoCloseable {

  /** Pages of every log that this program has made. */
  private static final int USUAL_PAGE_SIZE = 4_096;

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final int HEADER_BYTES = 100;

  private final FileChannel main;
  private final FileChannel writeAhead;
  private final WriteAheadFrames frames;
  private final boolean headerSound;
  private final int pageSize;
  private final int pages;

  private DamagedFile(FileChannel main, FileChannel writeAhead, WriteAheadFrames frames)
      throws IOException {
    this.main = main;
    this.writeAhead = writeAhead;
    this.frames = frames;
    ByteBuffer header = header();
    headerSound = hasMagic(header) && isPageSize(pageSize(header));
    pageSize = frames.pageSize() > 0 ? frames.pageSize() : pageSizeFrom(header);
    // A page at the end that is only there in part was never committed.
    pages = Math.max(frames.pages(), (int) (main.size() / pageSize));
  }

  /** Opens a file and the write-ahead file beside it, if there is one. */
  static DamagedFile open(Path file) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + "-wal");
    WriteAheadFrames frames = WriteAheadFrames.in(beside);
    FileChannel writeAhead =
        frames == WriteAheadFrames.NONE ? null : FileChannel.open(beside, StandardOpenOption.READ);
    return new DamagedFile(FileChannel.open(file, StandardOpenOption.READ), writeAhead, frames);
  }

  private ByteBuffer header() throws IOException {
    ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
    long place = frames.placeOf(1);
    read(place < 0 ? main : writeAhead, header, Math.max(0, place));
    return header;
  }

  private static boolean hasMagic(ByteBuffer header) {
    return header.slice(0, MAGIC.length).equals(ByteBuffer.wrap(MAGIC));
  }

  private static int pageSize(ByteBuffer header) {
    int stored = header.getShort(16) & 0xffff;
    return stored == 1 ? 65_536 : stored;
  }

  private int pageSizeFrom(ByteBuffer header) {
    return headerSound ? pageSize(header) : USUAL_PAGE_SIZE;
  }

  static boolean isPageSize(int bytes) {
    return bytes >= 512 && bytes <= 65_536 && Integer.bitCount(bytes) == 1;
  }

  /** False if the first page does not say that it is one. */
  boolean isHeaderSound() {
    return headerSound;
  }

  int pageSize() {
    return pageSize;
  }

  /** Number of pages; they count from 1. */
  int pages() {
    return pages;
  }

  /** A page as it was last committed; zeros where the file has no such page. */
  ByteBuffer page(int number) throws IOException {
    ByteBuffer page = ByteBuffer.allocate(pageSize);
    long place = frames.placeOf(number);
    if (place >= 0) {
      read(writeAhead, page, place);
    } else {
      read(main, page, (number - 1L) * pageSize);
    }
    return page;
  }

  private static void read(FileChannel from, ByteBuffer into, long place) throws IOException {
    while (into.hasRemaining() && from.read(into, place + into.position()) >= 0) {
      // until it is full or the file ends
    }
  }

  @Override
  public void close() throws IOException {
    main.close();
    if (writeAhead != null) {
      writeAhead.close();
    }
  }
}
