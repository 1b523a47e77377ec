package org.boothlamp.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;

/**
 * Lines a person types, read on a thread of its own so that samples can be taken meanwhile. Used
 * from one thread.
 */
final class TypedLines {

  private final LinkedBlockingQueue<Optional<String>> lines = new LinkedBlockingQueue<>();
  private boolean ended;

  /** Begins to read. */
  TypedLines(InputStream in) {
    Thread thread = new Thread(() -> read(in), "terminal");
    thread.setDaemon(true);
    thread.start();
  }

  private void read(InputStream in) {
    try {
      BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      String line = reader.readLine();
      while (line != null) {
        lines.add(Optional.of(line));
        line = reader.readLine();
      }
    } catch (IOException closed) {
      // a terminal that is gone types no more
    } finally {
      lines.add(Optional.empty());
    }
  }

  /** The next line, or null if there will be none; waits for it. */
  String next() {
    if (ended) {
      return null;
    }
    try {
      return line(lines.take());
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      ended = true;
      return null;
    }
  }

  /** The next line, or null if there will be none; does something again and again meanwhile. */
  String next(Runnable meanwhile) {
    while (!ended && lines.isEmpty()) {
      meanwhile.run();
    }
    return next();
  }

  /** The next line if it is there already, or null. */
  String poll() {
    Optional<String> line = lines.peek();
    return line == null || line.isEmpty() ? null : next();
  }

  private String line(Optional<String> line) {
    ended = line.isEmpty();
    return line.orElse(null);
  }
}
