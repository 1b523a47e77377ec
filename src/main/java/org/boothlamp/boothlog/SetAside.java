package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.tinylog.Logger;

/**
 * Damaged logs beside the log: {@code booth.db.damaged-2026-11-25T0742}, each with its write-ahead
 * file if it had one. They are moved, never changed or deleted.
 */
final class SetAside {

  private static final String MARK = ".damaged-";
  private static final String WRITE_AHEAD = "-wal";
  private static final String SHARED = "-shm";
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmm", Locale.ROOT);

  private SetAside() {}

  /**
   * Moves a log out of the way. Its write-ahead file goes first: if the power goes in between,
   * {@link #finish} knows what is left to do.
   *
   * @return where it lies now
   */
  static Path move(Path log, LocalDateTime now) throws IOException {
    Path aside = freeName(log, log.getFileName() + MARK + WHEN.format(now));
    if (Files.exists(with(log, WRITE_AHEAD))) {
      Files.move(with(log, WRITE_AHEAD), with(aside, WRITE_AHEAD));
    }
    Files.deleteIfExists(with(log, SHARED));
    Files.move(log, aside);
    return aside;
  }

  private static Path freeName(Path log, String name) {
    Path aside = log.resolveSibling(name);
    for (int number = 2; Files.exists(aside) || Files.exists(with(aside, WRITE_AHEAD)); number++) {
      aside = log.resolveSibling(name + "-" + number);
    }
    return aside;
  }

  /** Ends a move that a power loss cut off: a write-ahead file lies there without its log. */
  static void finish(Path log) {
    try {
      for (Path file : filesOf(log)) {
        String name = file.getFileName().toString();
        if (name.endsWith(WRITE_AHEAD)) {
          Path aside = file.resolveSibling(name.substring(0, name.length() - WRITE_AHEAD.length()));
          if (!Files.exists(aside) && Files.exists(log)) {
            Files.deleteIfExists(with(log, SHARED));
            Files.move(log, aside);
          }
        }
      }
    } catch (IOException failure) {
      Logger.warn(failure, "booth log {}: what lies beside it cannot be looked at", log);
    }
  }

  /** The damaged logs beside a log, in order of their names. */
  static List<Path> of(Path log) throws IOException {
    List<Path> asides = new ArrayList<>(filesOf(log));
    asides.removeIf(
        file -> file.toString().endsWith(WRITE_AHEAD) || file.toString().endsWith(SHARED));
    Collections.sort(asides);
    return asides;
  }

  private static List<Path> filesOf(Path log) throws IOException {
    List<Path> files = new ArrayList<>();
    Path folder = log.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      return files;
    }
    String start = log.getFileName() + MARK;
    try (DirectoryStream<Path> all =
        Files.newDirectoryStream(folder, file -> file.getFileName().toString().startsWith(start))) {
      all.forEach(files::add);
    }
    return files;
  }

  private static Path with(Path file, String ending) {
    return file.resolveSibling(file.getFileName() + ending);
  }
}
