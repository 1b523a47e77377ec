package org.boothlamp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** The jar as a process of its own, as a user or a supervisor starts it. */
final class DaemonProcess implements AutoCloseable {

  private static final long PATIENCE_SECONDS = 90;

  private final Path err;
  private final Path out;
  private final long startNanos;
  private final Process process;

  private DaemonProcess(Path folder, List<String> arguments) throws IOException {
    err = Files.createTempFile(folder, "stderr", ".txt");
    out = Files.createTempFile(folder, "stdout", ".txt");
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    Collections.addAll(command, "-XX:+UseSerialGC", "-Xms16m", "-Xmx64m");
    // Most of them live for seconds: the best compiler would be busy for nothing.
    command.add("-XX:TieredStopAtLevel=1");
    Collections.addAll(command, "-jar", System.getProperty("boothlamp.jar"));
    command.addAll(arguments);
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectError(err.toFile()).redirectOutput(out.toFile());
    startNanos = System.nanoTime();
    process = builder.start();
  }

  /** Starts a command; its output goes to files in {@code folder}. */
  static DaemonProcess start(Path folder, Object... arguments) throws IOException {
    List<String> words = new ArrayList<>();
    for (Object argument : arguments) {
      words.add(argument.toString());
    }
    return new DaemonProcess(folder, words);
  }

  /** {@link System#nanoTime} just before it was started. */
  long startNanos() {
    return startNanos;
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** What it said so far on standard error. */
  String err() {
    return read(err);
  }

  /** What it said so far on standard output. */
  String out() {
    return read(out);
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits until it has said something on standard error. */
  void awaitSaid(String text) throws InterruptedException {
    await(() -> err().contains(text), () -> "never said: " + text + "\n" + err());
  }

  /** Waits for something that this process is to bring about. */
  void await(String what, BooleanSupplier condition) throws InterruptedException {
    await(condition, () -> "never came: " + what + "\n" + err());
  }

  private void await(BooleanSupplier condition, Supplier<String> otherwise)
      throws InterruptedException {
    long begun = System.nanoTime();
    while (!condition.getAsBoolean()) {
      boolean late = System.nanoTime() - begun > TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
      if (late || !process.isAlive() && !condition.getAsBoolean()) {
        throw new AssertionError(otherwise.get());
      }
      Thread.sleep(5);
    }
  }

  /** Waits for its end; answers its exit code. */
  int exitCode() throws InterruptedException {
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      throw new AssertionError("does not end\n" + err());
    }
    return process.exitValue();
  }

  /** Asks it to end, as a supervisor does; answers its exit code. */
  int terminate() throws InterruptedException {
    process.destroy();
    return exitCode();
  }

  /** Ends it as a power cut would. */
  void kill() throws InterruptedException {
    process.destroyForcibly();
    exitCode();
  }

  @Override
  public void close() {
    process.destroyForcibly();
    process.onExit().join();
  }
}
