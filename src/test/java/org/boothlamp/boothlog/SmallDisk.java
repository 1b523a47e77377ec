package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A disk small enough to be filled: a file system in memory made for the test, or, where a
 * container may not mount one, the small one that containers have for shared memory.
 */
final class SmallDisk implements AutoCloseable {

  private static final long MOST_BYTES = 256L << 20;

  private final boolean mounted;
  private final Path root;
  private final Path folder;
  private final Path ballast;

  SmallDisk(Path mountPoint, String size) throws IOException {
    mounted = run("mount", "-t", "tmpfs", "-o", "size=" + size, "tmpfs", mountPoint.toString());
    root = mounted ? mountPoint : requireSmall(Path.of("/dev/shm"));
    folder = Files.createTempDirectory(root, "boothlog");
    ballast = folder.resolve("ballast");
  }

  private static Path requireSmall(Path disk) throws IOException {
    long bytes = Files.getFileStore(disk).getTotalSpace();
    if (bytes > MOST_BYTES) {
      throw new IllegalStateException(
          "no file system may be mounted here and "
              + disk
              + " is too large to be filled: bytes="
              + bytes
              + "; run as root, or give the container at most 256 MB of shared memory");
    }
    return disk;
  }

  Path folder() {
    return folder;
  }

  /** True if this disk was made for the test and takes other options. */
  boolean isMounted() {
    return mounted;
  }

  /** Writes until nothing more fits. */
  void fill() throws IOException {
    try (var out =
        Files.newByteChannel(ballast, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      for (int size = 1 << 20; size > 0; size /= 2) {
        writeUntilFull(out, ByteBuffer.allocate(size));
      }
    }
  }

  private static void writeUntilFull(WritableByteChannel out, ByteBuffer block) {
    try {
      while (true) {
        out.write(block.clear());
      }
    } catch (IOException full) {
      // That is the end that was wanted; a smaller block may still fit.
      return;
    }
  }

  /** Gives the room back. */
  void free() throws IOException {
    Files.delete(ballast);
  }

  void makeReadOnly() throws IOException {
    remount("ro");
  }

  void makeWritable() throws IOException {
    remount("rw");
  }

  private void remount(String option) throws IOException {
    if (!run("mount", "-o", "remount," + option, root.toString())) {
      throw new IllegalStateException("cannot be remounted " + option + ": " + root);
    }
  }

  private static boolean run(String... command) throws IOException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getInputStream().readAllBytes();
    return process.onExit().join().exitValue() == 0;
  }

  @Override
  public void close() throws IOException {
    if (mounted) {
      run("umount", "-l", root.toString());
      return;
    }
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
