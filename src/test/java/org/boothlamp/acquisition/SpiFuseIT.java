package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boothlamp.testing.FakeSpiConverter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program as a user starts it, reading a converter through Pi4J and the real open and ioctl
 * calls on {@code /dev/spidev0.0}. The I2C library has native code for ARM only, so there is no
 * such test for I2C on other machines.
 */
class SpiFuseIT {

  private static final long LONGEST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(30);
  private static final int ZERO_COUNT = 2_048;
  private static final double AMPS_PER_COUNT = 1_200.0 / 4_096;
  private static final double VOLTS_PER_COUNT = 100.0 / 4_096;

  @TempDir Path folder;

  private FakeSpiConverter converter;
  private Process daemon;

  @BeforeEach
  void setUp() throws Exception {
    writeSettings();
    converter = new FakeSpiConverter(folder);
  }

  @AfterEach
  void end() throws Exception {
    if (daemon != null) {
      daemon.destroy();
      assertTrue(daemon.waitFor(10, TimeUnit.SECONDS), "the daemon does not end");
    }
    converter.close();
  }

  private void writeSettings() throws IOException {
    Files.createDirectories(folder.resolve("procedures"));
    Files.writeString(
        folder.resolve("procedures/p.toml"),
        """
        id = "P-1"
        revision = "1"
        process = "111"
        current = "dc+"
        source = "cc"
        [[pass]]
        name = "fill"
        amps = [95, 125]
        volts = [20, 26]
        """);
    Files.writeString(
        folder.resolve("booth.toml"),
        """
        [booth]
        id = "B-1"
        [source]
        kind = "spi"
        device = "mcp3208"
        current_channel = 2
        voltage_channel = 5
        pairs_per_second = 1000
        [current]
        amps_per_count = 0.29296875
        zero_count = 2048
        [voltage]
        volts_per_count = 0.0244140625
        zero_count = 2048
        [lamp]
        outputs = ["trace"]
        [lamp.trace]
        file = "trace.csv"
        [log]
        folder = "log"
        [procedures]
        default_procedure = "P-1"
        default_pass = "fill"
        """);
  }

  private void weld(double amps, double volts) throws IOException {
    converter.setInput(2, ZERO_COUNT + (int) Math.round(amps / AMPS_PER_COUNT), 3);
    converter.setInput(5, ZERO_COUNT + (int) Math.round(volts / VOLTS_PER_COUNT), 8);
  }

  private Process start(String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx64m", "-jar", System.getProperty("boothlamp.jar")));
    command.addAll(List.of(arguments));
    command.addAll(List.of("--settings", folder.resolve("booth.toml").toString()));
    return converter.command(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  @Test
  void shouldReadValuesAndNoiseAndSayHowEvenly() throws Exception {
    weld(110, 23);
    String source = checkedSource();
    assertEquals(110, number(source, "current ([0-9.]+) A"), 0.15);
    assertEquals(3 * AMPS_PER_COUNT, number(source, "noise ([0-9.]+) A"), 0.05);
    assertEquals(23, number(source, "voltage ([0-9.]+) V"), 0.02);
    assertEquals(8 * VOLTS_PER_COUNT, number(source, "noise ([0-9.]+) V"), 0.02);
    assertTrue(source.startsWith("mcp3208 at /dev/spidev0.0, 1000 pairs/s"), source);
    double rate = number(source, "([0-9]+) of 1000 pairs/s; taken late by");
    assertTrue(rate > 100 && rate < 1_010, "a busy machine is slow, but never fast: " + rate);
    assertTrue(source.contains("counts 0 to 4095"), source);
    assertTrue(converter.state().startsWith("mode=0 clock=1000000 "), converter.state());
  }

  private String checkedSource() throws IOException {
    Process check = start("check", "--format", "json");
    for (String line : new String(check.getInputStream().readAllBytes()).lines().toList()) {
      JsonNode finding = new ObjectMapper().readTree(line);
      if (finding.path("part").asText().equals("source")) {
        return finding.path("detail").asText();
      }
    }
    throw new AssertionError("check said nothing of the source");
  }

  private static double number(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertTrue(matcher.find(), text);
    return Double.parseDouble(matcher.group(1));
  }

  @Test
  void shouldNeverBeGreenWhileTheConverterIsInTrouble() throws Exception {
    weld(110, 23);
    daemon = start("run");
    awaitSignal("green");

    converter.setFailing(true);
    assertInFaultUntilMended();
    converter.setFailing(false);
    awaitSignal("green");

    converter.setGone(true);
    assertInFaultUntilMended();
    converter.setGone(false);
    awaitSignal("green");

    converter.setIdle(true);
    assertInFaultUntilMended();
    converter.setIdle(false);
    awaitSignal("green");

    weld(140, 23);
    awaitSignal("red");
  }

  /** In fault within half a second, and for a second and a half after that nothing else. */
  private void assertInFaultUntilMended() throws IOException {
    long start = System.nanoTime();
    awaitSignal("fault");
    long lateNanos = System.nanoTime() - start;
    assertTrue(lateNanos < TimeUnit.MILLISECONDS.toNanos(1_000), "fault after " + lateNanos);
    int rows = signals().size();
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(1_500));
    List<String> meanwhile = signals().subList(rows, signals().size());
    assertFalse(meanwhile.contains("green"), () -> "green without samples: " + meanwhile);
    assertEquals("fault", lastSignal());
  }

  private void awaitSignal(String wanted) throws IOException {
    long start = System.nanoTime();
    while (!lastSignal().equals(wanted)) {
      assertTrue(daemon.isAlive(), "the daemon ended");
      assertTrue(
          System.nanoTime() - start < LONGEST_WAIT_NANOS, () -> "no " + wanted + " but " + trace());
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
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
    Path trace = folder.resolve("trace.csv");
    if (!Files.exists(trace)) {
      return List.of();
    }
    String text = Files.readString(trace);
    return text.substring(0, text.lastIndexOf('\n') + 1)
        .lines()
        .skip(1)
        .map(row -> row.substring(row.lastIndexOf(',') + 1))
        .toList();
  }
}
