package org.boothlamp.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** Reads a role's token from a file that only the monitor's user may read. */
final class TokenFile {

  /** 20 characters of a random text of letters and digits have over 100 bits. */
  static final int SHORTEST = 20;

  private static final long LARGEST_BYTES = 4_096;
  private static final Set<PosixFilePermission> OTHERS =
      Set.of(
          PosixFilePermission.GROUP_READ,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_READ,
          PosixFilePermission.OTHERS_WRITE);

  private TokenFile() {}

  /**
   * The token: the file without the line end.
   *
   * @throws PageStartException if it cannot be used; says why and what to do
   */
  static String read(Path file) {
    try {
      if (Files.getPosixFilePermissions(file).stream().anyMatch(OTHERS::contains)) {
        throw refused(file, "may be read or written by others", "chmod 600 " + file, null);
      }
      if (Files.size(file) > LARGEST_BYTES) {
        throw refused(file, "is longer than " + LARGEST_BYTES + " bytes", "check the path", null);
      }
      return checked(file, Files.readString(file).strip());
    } catch (UnsupportedOperationException noRightsHere) {
      throw refused(
          file, "is on a disk that keeps no rights", "move it to the system's own disk", null);
    } catch (IOException failure) {
      throw refused(
          file,
          "cannot be read (" + failure + ")",
          "make one with: openssl rand -hex 16 > " + file + "; chmod 600 " + file,
          failure);
    }
  }

  private static String checked(Path file, String token) {
    if (token.length() < SHORTEST || !token.matches("[\\x21-\\x7e]+")) {
      throw refused(
          file,
          "must hold at least " + SHORTEST + " letters, digits or signs without blanks",
          "make a new one with: openssl rand -hex 16 > " + file,
          null);
    }
    return token;
  }

  private static PageStartException refused(
      Path file, String why, String nextMove, Throwable cause) {
    return new PageStartException("the token file " + file + " " + why, nextMove, cause);
  }
}
