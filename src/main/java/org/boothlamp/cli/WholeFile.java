package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a text file that a person asked for, so that it appears whole or not at all. */
final class WholeFile {

  private WholeFile() {}

  /**
   * Writes a file that must not be there yet.
   *
   * @throws PartsException if it is there, or cannot be written
   */
  static void create(Path file, String text) {
    try {
      Files.createFile(file);
    } catch (FileAlreadyExistsException e) {
      throw new PartsException(
          file + " is there already; name another with --out, or replace it with --force", e);
    } catch (IOException e) {
      throw notWritten(file, e);
    }
    try {
      Files.writeString(file, text, StandardOpenOption.TRUNCATE_EXISTING);
    } catch (IOException e) {
      throw notWritten(file, removing(file, e));
    }
  }

  /**
   * Writes a file, in the place of one that may be there.
   *
   * @throws PartsException if it cannot be written; the old one is then as it was
   */
  static void replace(Path file, String text) {
    Path beside = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.writeString(beside, text);
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw notWritten(file, removing(beside, e));
    }
  }

  private static IOException removing(Path half, IOException cause) {
    try {
      Files.deleteIfExists(half);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
    return cause;
  }

  private static PartsException notWritten(Path file, IOException cause) {
    String why = cause.getClass().getSimpleName() + ": " + cause.getMessage();
    return new PartsException(
        file + " cannot be written (" + why + "); name another place with --out", cause);
  }
}
