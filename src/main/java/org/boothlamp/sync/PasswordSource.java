package org.boothlamp.sync;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Map;
import java.util.Set;

/**
 * Where a password is kept: a file that only its owner may read, or a systemd credential. It is
 * read anew for each connection, so that it can be changed without a restart. Immutable.
 *
 * @param file the file, or null
 * @param credential name of the credential, or null
 */
public record PasswordSource(Path file, String credential) {

  private static final String CREDENTIALS = "CREDENTIALS_DIRECTORY";
  private static final long LARGEST_BYTES = 4_096;
  private static final Set<PosixFilePermission> OTHERS =
      Set.of(
          PosixFilePermission.GROUP_READ,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_READ,
          PosixFilePermission.OTHERS_WRITE);

  /** A file. */
  public static PasswordSource ofFile(Path file) {
    return new PasswordSource(file, null);
  }

  /** A systemd credential. */
  public static PasswordSource ofCredential(String name) {
    return new PasswordSource(null, name);
  }

  /**
   * The password: the file without the line end.
   *
   * @param environment of this process; says where systemd keeps credentials
   */
  String read(Map<String, String> environment) throws SyncException {
    if (credential == null) {
      refuseIfOthersMayRead();
      return read(file, "put the password there, and nothing else");
    }
    String folder = environment.get(CREDENTIALS);
    if (folder == null) {
      throw SyncException.setUp(
          "the credential \"" + credential + "\" is not there: " + CREDENTIALS + " is not set",
          "start it from a systemd unit with LoadCredential=" + credential + ":FILE",
          null);
    }
    return read(
        Path.of(folder, credential), "add LoadCredential=" + credential + ":FILE to the unit");
  }

  private void refuseIfOthersMayRead() throws SyncException {
    try {
      Set<PosixFilePermission> rights = Files.getPosixFilePermissions(file);
      if (rights.stream().anyMatch(OTHERS::contains)) {
        throw SyncException.setUp(
            "the password file " + file + " may be read or written by others",
            "chmod 600 " + file,
            null);
      }
    } catch (UnsupportedOperationException noRightsHere) {
      throw SyncException.setUp(
          "the password file " + file + " is on a disk that keeps no rights",
          "move it to the system's own disk",
          noRightsHere);
    } catch (IOException failure) {
      throw unreadable(file, "put the password there and chmod 600", failure);
    }
  }

  private static String read(Path from, String nextMove) throws SyncException {
    try {
      if (Files.size(from) > LARGEST_BYTES) {
        throw SyncException.setUp(
            "the password file " + from + " is longer than " + LARGEST_BYTES + " bytes",
            "check that it is the right file",
            null);
      }
      String password = Files.readString(from).stripTrailing();
      if (password.isEmpty()) {
        throw SyncException.setUp("the password file " + from + " is empty", nextMove, null);
      }
      return password;
    } catch (IOException failure) {
      throw unreadable(from, nextMove, failure);
    }
  }

  private static SyncException unreadable(Path from, String nextMove, IOException failure) {
    return SyncException.setUp(
        "the password file " + from + " cannot be read (" + failure + ")", nextMove, failure);
  }
}
