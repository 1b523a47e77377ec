package org.boothlamp.sync;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 sums as the command sha256sum writes and reads them. */
final class Sha256 {

  private Sha256() {}

  /** The sum, 64 hexadecimal digits. */
  static String of(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException everyJavaHasIt) {
      throw new IllegalStateException(everyJavaHasIt);
    }
  }

  /** The line for a file beside the sum. */
  static String line(String sum, String fileName) {
    return sum + "  " + fileName + "\n";
  }

  /** The sum of a line; anything else comes out as no sum at all. */
  static String ofLine(String line) {
    return line.split(" ", 2)[0].strip();
  }
}
