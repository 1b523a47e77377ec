package org.boothlamp.acquisition;

/**
 * Where the codes of badges come from. A reader that is not there yet, or goes away, is tried again
 * by itself. Confined to one thread.
 */
public interface BadgeReader extends AutoCloseable {

  /**
   * The next code.
   *
   * @param waitNanos longest wait for one
   * @return printable ASCII without blanks, 1 to {@value #LONGEST_CODE} characters; null if none
   *     came
   */
  String next(long waitNanos);

  /** Characters of a code, at most; what is longer is no badge. */
  int LONGEST_CODE = 64;

  /** Why codes cannot come now, or null if they can. */
  SourceException failure();

  /** Gives the device back; a second call does nothing. */
  @Override
  void close();
}
