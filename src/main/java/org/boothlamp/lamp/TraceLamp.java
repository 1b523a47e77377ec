package org.boothlamp.lamp;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.NanoClock;

/**
 * The lamp as a CSV file, for measuring how late it is: one row at each change, handed to the
 * operating system at once.
 *
 * <pre>
 *   monotonic_ns,samples_ns,signal
 *   81236412345678,81236405000000,red
 * </pre>
 *
 * <p>{@code monotonic_ns} is the lamp's clock when the row is written, {@code samples_ns} the time
 * of the samples behind the signal; a fault that the lamp shows by itself carries those of the last
 * signal before it. Confined to one thread.
 */
public final class TraceLamp implements LampOutput {

  private static final String HEADER = "monotonic_ns,samples_ns,signal\n";

  private final Path file;
  private final FileChannel channel;
  private final NanoClock clock;

  /** End of the last whole row: a row cut off by a full disk is written over. */
  private long endOfRows;

  /** Signal of the last row; null before the first. */
  private Signal traced;

  private long lastSamplesNanos;

  private TraceLamp(Path file, FileChannel channel, NanoClock clock) {
    this.file = file;
    this.channel = channel;
    this.clock = clock;
  }

  /**
   * Starts a trace; what the file held before is gone.
   *
   * @param file the CSV file
   * @param clock monotonic time of the rows
   * @throws LampUnavailableException if the file cannot be written
   */
  public static TraceLamp open(Path file, NanoClock clock) throws LampUnavailableException {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      FileChannel channel =
          FileChannel.open(
              file,
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE,
              StandardOpenOption.TRUNCATE_EXISTING);
      return begun(new TraceLamp(file, channel, clock));
    } catch (IOException failure) {
      throw new LampUnavailableException(
          "the lamp's trace file "
              + file
              + " cannot be written: "
              + failure
              + "; see that its folder exists, has room and may be written to",
          failure);
    }
  }

  private static TraceLamp begun(TraceLamp trace) throws IOException {
    try {
      trace.append(HEADER);
      return trace;
    } catch (IOException failure) {
      trace.channel.close();
      throw failure;
    }
  }

  @Override
  public String name() {
    return "trace file " + file;
  }

  @Override
  public void apply(Signal signal, int lights, long samplesNanos) throws IOException {
    lastSamplesNanos = samplesNanos;
    if (signal != traced) {
      append(clock.nanoTime() + "," + samplesNanos + "," + signal.word() + "\n");
      traced = signal;
    }
  }

  private void append(String row) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(row.getBytes(StandardCharsets.US_ASCII));
    long at = endOfRows;
    while (bytes.hasRemaining()) {
      at += channel.write(bytes, at);
    }
    endOfRows = at;
  }

  @Override
  public void close() throws IOException {
    try (channel) {
      apply(Signal.DARK, 0, lastSamplesNanos);
    }
  }
}
