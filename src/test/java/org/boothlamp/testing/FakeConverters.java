package org.boothlamp.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * A converter posing as {@code /dev/spidev0.0} for the commands it is asked to start: {@code
 * src/test/c/fake_spi_converter.c}, compiled here and served by FUSE. Needs root, and the Debian
 * packages gcc, libc6-dev, libfuse3-dev, fuse3, pkg-config and util-linux. Confined to one thread.
 */
public final class FakeSpiConverter implements AutoCloseable {

  private static final Path SOURCES = Path.of("src/test/c").toAbsolutePath();
  private static final String PACKAGES =
      "; install the packages gcc, libc6-dev, libfuse3-dev, fuse3 and pkg-config, run as root, and"
          + " see that /dev/fuse is there";
  private static final long LONGEST_START_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Path mount;
  private final Process server;

  /** A converter with all inputs at 0. */
  public FakeSpiConverter(Path folder) throws IOException, InterruptedException {
    Path program = folder.resolve("fake_spi_converter");
    compile(program);
    mount = Files.createDirectories(folder.resolve("converter"));
    server =
        new ProcessBuilder(program.toString(), "-f", "-s", mount.toString()).inheritIO().start();
    awaitMount();
  }

  private static void compile(Path program) throws IOException, InterruptedException {
    String command =
        "gcc -std=gnu11 -O2 -Wall -Wextra -Werror -o '"
            + program
            + "' '"
            + SOURCES.resolve("fake_spi_converter.c")
            + "' $(pkg-config --cflags --libs fuse3)";
    Process compiler = new ProcessBuilder("sh", "-ec", command).redirectErrorStream(true).start();
    String said = new String(compiler.getInputStream().readAllBytes());
    if (compiler.waitFor() != 0) {
      throw new IOException("the fake converter does not compile: " + said + PACKAGES);
    }
  }

  private void awaitMount() throws IOException {
    long start = System.nanoTime();
    while (!Files.exists(control())) {
      if (!server.isAlive() || System.nanoTime() - start > LONGEST_START_NANOS) {
        throw new IOException("the fake converter could not be mounted at " + mount + PACKAGES);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }

  private Path control() {
    return mount.resolve("control");
  }

  /** Sets an input to a count, and lets it go up and down around it by some. */
  public void setInput(int channel, int count, int noiseCounts) throws IOException {
    tell("level " + channel + " " + count);
    tell("noise " + channel + " " + noiseCounts);
  }

  /** Lets every transfer fail with EIO, or mends it. */
  public void setFailing(boolean isFailing) throws IOException {
    tell("fail " + (isFailing ? 5 : 0));
  }

  /** Takes the device away, or puts it back. */
  public void setGone(boolean isGone) throws IOException {
    tell("gone " + (isGone ? 1 : 0));
  }

  /** Takes the converter off the bus, whose data line is pulled high, or puts it back. */
  public void setIdle(boolean isIdle) throws IOException {
    tell("idle " + (isIdle ? 1 : 0));
  }

  private void tell(String command) throws IOException {
    Files.writeString(control(), command);
  }

  /** What it was set to, for example {@code mode=0 clock=1000000 transfers=1234}. */
  public String state() throws IOException {
    return Files.readString(control()).trim();
  }

  /** A command that finds this converter at {@code /dev/spidev0.0}; not started. */
  public ProcessBuilder command(List<String> command) {
    List<String> whole = new ArrayList<>();
    whole.add(SOURCES.resolve("with-spi-device").toString());
    whole.add(mount.resolve("spidev0.0").toString());
    whole.add("spidev0.0");
    whole.addAll(command);
    return new ProcessBuilder(whole);
  }

  /** The file system is let go of even if a program still has its device open. */
  @Override
  public void close() throws IOException {
    Process unmount =
        new ProcessBuilder("fusermount3", "-u", "-z", mount.toString()).inheritIO().start();
    unmount.onExit().join();
    server.destroy();
    server.onExit().join();
  }
}
