package org.boothlamp.testing;

import java.io.FileInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Two pseudo-terminals joined by socat: a serial cable whose ends are files, and that can be cut
 * and put back. Holds both ends open, so that users may come and go. Confined to one thread.
 */
public final class PtyPair implements AutoCloseable {

  private static final long LONGEST_START_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Path hostSide;
  private final Path boardSide;
  private Process socat;
  private FileInputStream hostHold;
  private FileInputStream boardHold;

  /** A cable whose ends are links in {@code folder}. */
  public PtyPair(Path folder) throws IOException {
    hostSide = folder.resolve("host");
    boardSide = folder.resolve("board");
    restore();
  }

  /** The end for the program under test. */
  public Path hostSide() {
    return hostSide;
  }

  /** The end for the front end. */
  public Path boardSide() {
    return boardSide;
  }

  /** Puts a cut cable back under the same names. */
  public void restore() throws IOException {
    socat = new ProcessBuilder("socat", end(hostSide), end(boardSide)).inheritIO().start();
    long start = System.nanoTime();
    while (!Files.exists(hostSide) || !Files.exists(boardSide)) {
      if (!socat.isAlive() || System.nanoTime() - start > LONGEST_START_NANOS) {
        throw new IOException("socat made no pseudo-terminals at " + hostSide);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
    }
    hostHold = new FileInputStream(hostSide.toFile());
    boardHold = new FileInputStream(boardSide.toFile());
  }

  private static String end(Path link) {
    return "pty,raw,echo=0,link=" + link;
  }

  /** Cuts the cable: both ends are gone. */
  public void cut() throws IOException {
    hostHold.close();
    boardHold.close();
    socat.destroyForcibly();
    socat.onExit().join();
    Files.deleteIfExists(hostSide);
    Files.deleteIfExists(boardSide);
  }

  @Override
  public void close() throws IOException {
    if (socat.isAlive()) {
      cut();
    }
  }
}
