package org.boothlamp.boothlog;

import java.sql.SQLException;

/** SQLite's result codes, sorted by what happens next. */
final class SqliteCodes {

  static final int BUSY = 5;
  static final int LOCKED = 6;
  static final int READONLY = 8;
  static final int INTERRUPT = 9;
  static final int IOERR = 10;
  static final int CORRUPT = 11;
  static final int FULL = 13;
  static final int CANTOPEN = 14;
  static final int TOOBIG = 18;
  static final int CONSTRAINT = 19;
  static final int MISMATCH = 20;
  static final int NOTADB = 26;

  private static final int PRIMARY_MASK = 0xff;

  private SqliteCodes() {}

  /** The primary result code, without the detail of the extended one. */
  static int primary(SQLException failure) {
    return failure.getErrorCode() & PRIMARY_MASK;
  }

  /** True if there is no room on the disk. */
  static boolean isFull(Exception failure) {
    return sqlOf(failure) != null && primary(sqlOf(failure)) == FULL;
  }

  /** True if the file is no sound database (any more). */
  static boolean isDamage(Exception failure) {
    SQLException known = sqlOf(failure);
    return known != null && (primary(known) == CORRUPT || primary(known) == NOTADB);
  }

  /** The failure itself, or what it was made of by {@link LogFile#explain}; else null. */
  private static SQLException sqlOf(Exception failure) {
    if (failure instanceof SQLException known) {
      return known;
    }
    return failure != null && failure.getCause() instanceof SQLException known ? known : null;
  }

  /** True if the row itself is refused: it will never go in, however often it is tried. */
  static boolean isOfTheRow(SQLException failure) {
    return switch (primary(failure)) {
      case TOOBIG, CONSTRAINT, MISMATCH -> true;
      default -> false;
    };
  }

  /** True if the connection is sound and the same thing may work later. */
  static boolean passesByItself(SQLException failure) {
    return switch (primary(failure)) {
      case BUSY, LOCKED, FULL -> true;
      default -> false;
    };
  }
}
