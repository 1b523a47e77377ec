package org.boothlamp.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.RunRecord;

/**
 * The program as a user starts it, beside fake converters: its lamp read from the trace, its log
 * after its end. Confined to one thread.
 */
public final class ConverterBooth implements AutoCloseable {

  private static final long LONGEST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(40);
  private static final long TROUBLE_NANOS = TimeUnit.MILLISECONDS.toNanos(1_500);

  private final BoothFolder booth;
  private final FakeConverters converters;
  private Process daemon;

  /** A booth whose procedure has the windows 95 to 125 A and 20 to 26 V. */
  public ConverterBooth(Path folder) throws IOException, InterruptedException {
    booth = new BoothFolder(folder.resolve("booth")).defaultProcedure("P-1");
    booth.stickProcedure("P-1", "fill");
    converters = new FakeConverters(folder);
  }

  /** The converters within its reach. */
  public FakeConverters converters() {
    return converters;
  }

  /** Writes the settings, with the tables of the source as they stand in the file. */
  public void source(String tables) {
    booth.source(tables).write();
  }

  /** Starts the monitor. */
  public void run() throws IOException {
    daemon = start("run");
  }

  private Process start(String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.addAll(List.of("-Xmx64m", "-jar", System.getProperty("boothlamp.jar")));
    command.addAll(List.of(arguments));
    command.addAll(List.of("--settings", booth.settings().toString()));
    return converters.java(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  /** What {@code check} finds of the source. */
  public JsonNode checkedSource() throws IOException {
    Process check = start("check", "--format", "json");
    String said = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    for (String line : said.lines().toList()) {
      JsonNode finding = new ObjectMapper().readTree(line);
      if (finding.path("part").asText().equals("source")) {
        return finding;
      }
    }
    throw new AssertionError("check said nothing of the source: " + said);
  }

  /** Waits for the lamp to show a signal. */
  public void awaitSignal(String wanted) throws IOException {
    long start = System.nanoTime();
    while (!lastSignal().equals(wanted)) {
      assertTrue(daemon.isAlive(), "the daemon ended");
      assertTrue(
          System.nanoTime() - start < LONGEST_WAIT_NANOS, () -> "no " + wanted + " but " + trace());
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }

  /** Something is done to a converter, or mended. */
  @FunctionalInterface
  public interface Change {

    /** Does it. */
    void make(boolean isBroken) throws IOException;
  }

  /** Breaks and mends something: the lamp must be in fault within a second, and in between. */
  public void breakAndMend(Change change) throws IOException {
    awaitSignal("green");
    long start = System.nanoTime();
    change.make(true);
    awaitSignal("fault");
    long lateNanos = System.nanoTime() - start;
    assertTrue(lateNanos < TimeUnit.MILLISECONDS.toNanos(1_000), "fault after " + lateNanos);
    int rows = signals().size();
    LockSupport.parkNanos(TROUBLE_NANOS);
    List<String> meanwhile = signals().subList(rows, signals().size());
    assertFalse(meanwhile.contains("green"), () -> "green without samples: " + meanwhile);
    assertEquals("fault", lastSignal());
    change.make(false);
    awaitSignal("green");
  }

  private String lastSignal() throws IOException {
    List<String> signals = signals();
    return signals.isEmpty() ? "" : signals.get(signals.size() - 1);
  }

  private String trace() {
    try {
      return signals().toString();
    } catch (IOException failure) {
      return failure.toString();
    }
  }

  /** Whole rows only: the last may be on its way. */
  private List<String> signals() throws IOException {
    if (!Files.exists(booth.trace())) {
      return List.of();
    }
    String text = Files.readString(booth.trace());
    return text.substring(0, text.lastIndexOf('\n') + 1)
        .lines()
        .skip(1)
        .map(row -> row.substring(row.lastIndexOf(',') + 1))
        .toList();
  }

  /** The log's events of one word, in order of time; may be asked while the monitor runs. */
  public List<EventRecord> events(String word) {
    try (BoothLogReader log = BoothLogReader.open(booth.log())) {
      return log.read(0, Long.MAX_VALUE).events().stream()
          .filter(event -> event.what().equals(word))
          .toList();
    }
  }

  /** The runs in the log. */
  public List<RunRecord> runs() {
    try (BoothLogReader log = BoothLogReader.open(booth.log())) {
      return log.read(0, Long.MAX_VALUE).runs();
    }
  }

  /** Waits for an event in the log and gives the first. */
  public EventRecord awaitEvent(String word) {
    long start = System.nanoTime();
    while (events(word).isEmpty()) {
      assertTrue(daemon.isAlive(), "the daemon ended");
      assertTrue(System.nanoTime() - start < LONGEST_WAIT_NANOS, "no event \"" + word + "\"");
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(100));
    }
    return events(word).get(0);
  }

  /** Ends the monitor in order, if it was started. */
  public void stop() throws InterruptedException {
    if (daemon != null) {
      daemon.destroy();
      assertTrue(daemon.waitFor(10, TimeUnit.SECONDS), "the daemon does not end");
    }
  }

  @Override
  public void close() throws IOException {
    try {
      stop();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } finally {
      converters.close();
    }
  }
}
