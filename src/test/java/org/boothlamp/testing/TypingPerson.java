package org.boothlamp.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * Somebody at a terminal: waits for the prompt {@code "> "} at the start of a line, then types the
 * next line. Everything printed goes on to somebody who sets the load. Used by the thread that
 * prints.
 */
public final class TypingPerson extends OutputStream {

  private final LoadFollower follower;
  private final Deque<String> lines;
  private final PipedOutputStream keys = new PipedOutputStream();
  private final PipedInputStream typed;
  private char before = '\n';
  private boolean prompting;

  /** Types these lines, one for each prompt. */
  public TypingPerson(LoadFollower follower, List<String> lines) throws IOException {
    this.follower = follower;
    this.lines = new ArrayDeque<>(lines);
    typed = new PipedInputStream(keys, 4096);
  }

  /** What is typed. */
  public InputStream in() {
    return typed;
  }

  @Override
  public void write(int next) {
    follower.write(next);
    if (prompting && next == ' ') {
      type();
    }
    prompting = before == '\n' && next == '>';
    before = (char) next;
  }

  private void type() {
    try {
      if (lines.isEmpty()) {
        keys.close();
        return;
      }
      keys.write((lines.poll() + "\n").getBytes(StandardCharsets.UTF_8));
      keys.flush();
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** Lines that nothing prompted for yet. */
  public int left() {
    return lines.size();
  }
}
