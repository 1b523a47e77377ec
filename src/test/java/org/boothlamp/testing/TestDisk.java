package org.boothlamp.testing;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * A disk of a test's own that can be full or stand still. Needs root, and the Debian packages
 * mount, util-linux and e2fsprogs. Confined to one thread.
 */
public final class TestDisk implements AutoCloseable {

  private final Path mountPoint;

  private TestDisk(Path mountPoint) {
    this.mountPoint = mountPoint;
  }

  /** A small one in memory. */
  public static TestDisk inMemory(Path mountPoint, long bytes) throws IOException {
    Files.createDirectories(mountPoint);
    String said = run("mount", "-t", "tmpfs", "-o", "size=" + bytes, "tmpfs", "" + mountPoint);
    Assumptions.assumeTrue(said.isEmpty(), "no file system may be mounted here: " + said);
    return new TestDisk(mountPoint);
  }

  /** One in a file, with a file system that can be frozen. */
  public static TestDisk freezable(Path image, Path mountPoint) throws IOException {
    Files.createDirectories(mountPoint);
    try (RandomAccessFile file = new RandomAccessFile(image.toFile(), "rw")) {
      file.setLength(64L << 20);
    }
    String said = run("mkfs.ext4", "-q", "" + image);
    said += said.isEmpty() ? run("mount", "-o", "loop", "" + image, "" + mountPoint) : "";
    Assumptions.assumeTrue(said.isEmpty(), "no file system in a file may be mounted: " + said);
    return new TestDisk(mountPoint);
  }

  /**
   * Lets every write stand still for some time, sync calls and mapped memory included. A process of
   * its own thaws the disk, for nothing that touches it could be ended meanwhile.
   */
  public void freezeFor(int seconds) throws IOException {
    String said =
        run(
            "sh",
            "-ec",
            "fsfreeze -f \"$0\"; sleep " + seconds + "; fsfreeze -u \"$0\"",
            "" + mountPoint);
    if (!said.isEmpty()) {
      throw new IOException("the disk could not be frozen: " + said);
    }
  }

  /** Leaves no free byte. */
  public void fill() throws IOException {
    long free = Files.getFileStore(mountPoint).getUsableSpace();
    Files.write(mountPoint.resolve("ballast"), new byte[Math.toIntExact(free)]);
  }

  private static String run(String... command) throws IOException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes()).strip();
    boolean good = process.onExit().join().exitValue() == 0;
    return good ? "" : command[0] + " failed: " + said;
  }

  @Override
  public void close() throws IOException {
    run("umount", "-l", "" + mountPoint);
  }
}
