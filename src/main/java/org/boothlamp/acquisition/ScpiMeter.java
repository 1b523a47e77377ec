package org.boothlamp.acquisition;

import java.nio.charset.StandardCharsets;
import org.boothlamp.acquisition.SourceException.Reason;

/**
 * A reference meter that speaks SCPI (IEEE 488.2, SCPI-1999) over a serial line: one command a
 * line, ended by LF; answers end with LF or CR LF. An answer that does not come within 2 s, or is
 * no number, is asked for again, three times in all; what came late is thrown away first, so that
 * it is not taken for the next answer.
 *
 * <p>Everything that goes wrong is a {@link SourceException}: FAILED for a meter that does not
 * answer, MALFORMED for an answer that is none. Confined to one thread, but the counters may be
 * read from any.
 */
public final class ScpiMeter implements AutoCloseable {

  /** Longest wait for the end of an answer. */
  static final long ANSWER_NANOS = 2_000_000_000L;

  /** Before a second try the line must have been silent so long. */
  private static final long QUIET_NANOS = 200_000_000L;

  /** A line that never falls silent is no reason to wait for ever. */
  private static final int MOST_QUIET_READS = 50;

  private static final int TRIES = 3;
  private static final int LONGEST_ANSWER = 256;

  private final ByteLine line;
  private final String port;
  private final byte[] input = new byte[512];
  private final StringBuilder answer = new StringBuilder();
  private volatile long asked;
  private volatile long askedAgain;

  /**
   * A meter on a line, not asked yet.
   *
   * @param line closed by {@link #close}
   * @param port its name, for people
   */
  public ScpiMeter(ByteLine line, String port) {
    this.line = line;
    this.port = port;
  }

  /** What the meter says of itself ({@code *IDN?}): maker, model, serial number, firmware. */
  public String identity() {
    String last = "";
    for (int attempt = 0; attempt < TRIES; attempt++) {
      String identity = ask("*IDN?");
      if (identity != null && isText(identity)) {
        return identity;
      }
      last = identity == null ? last : identity;
      settle();
    }
    throw last.isEmpty() ? silent("*IDN?") : garbled("*IDN?", last);
  }

  private static boolean isText(String identity) {
    return !identity.isBlank() && identity.chars().allMatch(c -> c >= ' ' && c <= '~');
  }

  /** Sends a command that has no answer, such as {@code SYST:REM}. */
  public void tell(String command) {
    send(command);
  }

  /**
   * One reading.
   *
   * @param query such as {@code MEAS:VOLT:DC?} or {@code READ?}
   * @return finite, in the meter's unit
   */
  public double read(String query) {
    String last = null;
    for (int attempt = 0; attempt < TRIES; attempt++) {
      asked++;
      String text = ask(query);
      if (text != null && ScpiNumber.isNumber(text)) {
        return value(query, ScpiNumber.parse(text));
      }
      askedAgain++;
      last = text == null ? last : text;
      settle();
    }
    throw last == null ? silent(query) : garbled(query, last);
  }

  private double value(String query, double value) {
    if (ScpiNumber.isNotANumber(value)) {
      throw refused(
          query, "the meter answers 9.91E37, not-a-number", "look at its display and its function");
    }
    if (ScpiNumber.isOverload(value)) {
      throw refused(
          query,
          "the meter answers 9.9E37, an overload",
          "choose a larger range, or let it choose, and take the point again");
    }
    return value;
  }

  /** The next line after a command, without its end; null if none came in time. */
  private String ask(String command) {
    send(command);
    answer.setLength(0);
    long start = System.nanoTime();
    long left = ANSWER_NANOS;
    while (left > 0) {
      int count = line.read(input, Math.min(left, QUIET_NANOS));
      if (count == ByteLine.DOWN) {
        throw down();
      }
      if (takeLine(count)) {
        return answer.toString();
      }
      left = ANSWER_NANOS - (System.nanoTime() - start);
    }
    return null;
  }

  /** True once the answer is whole. A meter that never ends its line is cut off. */
  private boolean takeLine(int count) {
    for (int i = 0; i < count; i++) {
      char next = (char) (input[i] & 0xFF);
      if (next == '\n') {
        int length = answer.length();
        if (length > 0 && answer.charAt(length - 1) == '\r') {
          answer.setLength(length - 1);
        }
        return true;
      }
      answer.append(next);
    }
    return answer.length() > LONGEST_ANSWER;
  }

  private void send(String command) {
    byte[] bytes = (command + "\n").getBytes(StandardCharsets.US_ASCII);
    drop(0);
    if (!line.write(bytes, bytes.length)) {
      throw down();
    }
  }

  /** After trouble: lets a late answer arrive, and throws it away. */
  private void settle() {
    drop(QUIET_NANOS);
  }

  private void drop(long waitNanos) {
    int reads = 0;
    while (line.read(input, waitNanos) > 0 && reads < MOST_QUIET_READS) {
      reads++;
    }
  }

  private SourceException down() {
    SourceException failure = line.failure();
    return failure != null
        ? failure
        : new SourceException(
            Reason.FAILED, "meter at " + port, "the line failed", "check its cable");
  }

  private SourceException silent(String query) {
    return new SourceException(
        Reason.FAILED,
        "meter at " + port,
        "no answer to " + query + " within 2 s, asked " + TRIES + " times",
        "switch the meter on and to remote, check the cable and the line speed of both, and choose"
            + " a faster rate of reading if it is slower than that");
  }

  private SourceException garbled(String query, String text) {
    return refused(
        query,
        "an answer must be a number, asked " + TRIES + " times, but is " + ScpiNumber.shown(text),
        "check the line speed, and that the query suits the meter");
  }

  private SourceException refused(String query, String what, String nextMove) {
    return new SourceException(Reason.MALFORMED, "meter at " + port + ", " + query, what, nextMove);
  }

  /** Readings asked for so far, repeats included. */
  public long asked() {
    return asked;
  }

  /** Of these, how many brought no number. */
  public long askedAgain() {
    return askedAgain;
  }

  @Override
  public void close() {
    line.close();
  }
}
