package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Room on a disk, for people. */
final class Room {

  private static final double MEGABYTE = 1e6;

  private Room() {}

  /** What a program may still write beside or in a file that exists. */
  static long freeBytes(Path existing) throws IOException {
    return Files.getFileStore(existing).getUsableSpace();
  }

  /** "5.2 MB", "31000 MB". */
  static String words(double bytes) {
    double megabytes = bytes / MEGABYTE;
    return String.format(Locale.ROOT, megabytes < 100 ? "%.1f MB" : "%.0f MB", megabytes);
  }
}
