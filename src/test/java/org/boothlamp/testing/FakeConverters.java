package org.boothlamp.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Converters posing as {@code /dev/spidev0.0} and {@code /dev/i2c-1} for the programs that are
 * asked to start: {@code src/test/c/fake_converters.c} and its parts, compiled here and served by
 * FUSE; and the native code that Pi4J's I2C lacks on other processors than ARM. Needs root, a JDK,
 * and the Debian packages gcc, libc6-dev, libfuse3-dev, fuse3, pkg-config and util-linux. Confined
 * to one thread.
 */
public final class FakeConverters implements AutoCloseable {

  private static final Path SOURCES = Path.of("src/test/c").toAbsolutePath();
  private static final String COMPILER = "gcc -std=gnu11 -O2 -Wall -Wextra -Werror";
  private static final String PACKAGES =
      "; install the packages gcc, libc6-dev, libfuse3-dev, fuse3 and pkg-config, run as root on a"
          + " JDK, and see that /dev/fuse is there";
  private static final long LONGEST_START_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Path folder;
  private final Path mount;
  private final Process server;

  /** Converters with all inputs at 0; their files are put in a folder. */
  public FakeConverters(Path folder) throws IOException, InterruptedException {
    this.folder = folder;
    compileConverters();
    compileNatives();
    mount = Files.createDirectories(folder.resolve("converters"));
    String program = folder.resolve("fake_converters").toString();
    server = new ProcessBuilder(program, "-f", "-s", mount.toString()).inheritIO().start();
    awaitMount();
  }

  private void compileConverters() throws IOException, InterruptedException {
    compile(
        "-o '%s' '%s'/fake_*.c $(pkg-config --cflags --libs fuse3)"
            .formatted(folder.resolve("fake_converters"), SOURCES));
  }

  private void compileNatives() throws IOException, InterruptedException {
    Path headers = Path.of(System.getProperty("java.home"), "include");
    compile(
        "-shared -fPIC -o '%s' -I '%s' -I '%s' '%s'"
            .formatted(
                folder.resolve("libpi4j-linuxfs.so"),
                headers,
                headers.resolve("linux"),
                SOURCES.resolve("pi4j_linuxfs.c")));
  }

  private static void compile(String arguments) throws IOException, InterruptedException {
    Process compiler =
        new ProcessBuilder("sh", "-ec", COMPILER + " " + arguments)
            .redirectErrorStream(true)
            .start();
    String said = new String(compiler.getInputStream().readAllBytes());
    if (compiler.waitFor() != 0) {
      throw new IOException("the fake converters do not compile: " + said + PACKAGES);
    }
  }

  private void awaitMount() throws IOException {
    long start = System.nanoTime();
    while (!Files.exists(control())) {
      if (!server.isAlive() || System.nanoTime() - start > LONGEST_START_NANOS) {
        throw new IOException("the fake converters could not be mounted at " + mount + PACKAGES);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }

  private Path control() {
    return mount.resolve("control");
  }

  /** An MCP3208; levels and noise are counts. */
  public Converter spi() {
    return new Converter("spi");
  }

  /** An ADS1115 at address 0x48, or an ADS1015; levels and noise are microvolts. */
  public Converter i2c() {
    return new Converter("i2c");
  }

  /** One of the converters, and what can be done to it. */
  public final class Converter {

    private final String name;

    private Converter(String name) {
      this.name = name;
    }

    /** Sets an input to a level, and lets it go up and down around it by some. */
    public void setInput(int input, long level, long noise) throws IOException {
      tell("level", input + " " + level);
      tell("noise", input + " " + noise);
    }

    /** Lets every transfer fail with an error of the kernel; 0 mends it. */
    public void setFailure(int error) throws IOException {
      tell("fail", "" + error);
    }

    /** Takes the device away, or puts it back. */
    public void setGone(boolean isGone) throws IOException {
      tell("gone", isGone ? "1" : "0");
    }

    /** SPI: takes the converter off the bus, whose data line is pulled high, or puts it back. */
    public void setIdle(boolean isIdle) throws IOException {
      tell("idle", isIdle ? "1" : "0");
    }

    /** I2C: 16 for an ADS1115, 12 for an ADS1015. */
    public void setBits(int bits) throws IOException {
      tell("bits", "" + bits);
    }

    private void tell(String key, String values) throws IOException {
      Files.writeString(control(), name + " " + key + " " + values);
    }

    /** What it was set to, for example {@code mode=0 clock=1000000 transfers=1234}. */
    public String state() throws IOException {
      return Files.readAllLines(control()).stream()
          .filter(line -> line.startsWith(name + " "))
          .map(line -> line.substring(name.length() + 1))
          .findFirst()
          .orElseThrow();
    }
  }

  /** A Java program that finds these converters at their device names; not started. */
  public ProcessBuilder java(List<String> arguments) {
    List<String> whole = new ArrayList<>();
    whole.add(SOURCES.resolve("with-converters").toString());
    whole.add(mount.toString());
    whole.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    whole.add("-Dpi4j.library.path=" + folder);
    whole.addAll(arguments);
    return new ProcessBuilder(whole);
  }

  /** The file system is let go of even if a program still has a device open. */
  @Override
  public void close() throws IOException {
    Process unmount =
        new ProcessBuilder("fusermount3", "-u", "-z", mount.toString()).inheritIO().start();
    unmount.onExit().join();
    server.destroy();
    server.onExit().join();
  }
}
