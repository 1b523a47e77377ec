package org.boothlamp.acquisition;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The firmware's core in a process of its own, as a board at the far end of a line. */
final class FirmwareBoard implements AutoCloseable {

  /**
   * The lamp changed.
   *
   * @param clockMillis the board's clock, modulo 2^32
   * @param nanos {@link System#nanoTime}
   * @param lights red, amber, green: the letters R, A and G, dots where dark
   */
  record Change(long clockMillis, long nanos, String lights) {

    boolean isGreenLit() {
      return lights.endsWith("G");
    }

    private static Change parse(String line) {
      String[] words = line.split(" ");
      return new Change(Long.parseLong(words[0]), Long.parseLong(words[1]) * 1000, words[2]);
    }
  }

  private final Process process;
  private final List<Change> changes = new ArrayList<>();
  private final Thread listener = new Thread(this::listen, "firmware listener");

  /** Starts the program on this end of a line; {@code options} are the program's own. */
  FirmwareBoard(Path program, Path port, String... options) throws IOException {
    List<String> command = new ArrayList<>(List.of(program.toString(), port.toString()));
    command.addAll(List.of(options));
    process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    listener.setDaemon(true);
    listener.start();
  }

  private void listen() {
    try (BufferedReader lines = process.inputReader()) {
      lines.lines().map(Change::parse).forEach(this::add);
    } catch (IOException broken) {
      throw new IllegalStateException(broken);
    }
  }

  private synchronized void add(Change change) {
    changes.add(change);
  }

  /** What the lamp did so far, in order. */
  synchronized List<Change> changes() {
    return List.copyOf(changes);
  }

  /** The lights now, or the empty word before the program has begun. */
  synchronized String lights() {
    return changes.isEmpty() ? "" : changes.get(changes.size() - 1).lights();
  }

  /** Ends the program and waits for its last word. */
  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    process.onExit().join();
    boolean interrupted = false;
    while (listener.isAlive()) {
      try {
        listener.join();
      } catch (InterruptedException signal) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
