package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.boothlamp.calibration.Channel;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.report.Colour;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SettableLoad;
import org.boothlamp.testing.StreamSource;
import org.junit.jupiter.api.Test;

/** What a person sees while a level is waited for. */
class WaitLineTest {

  private static final ChannelScale SCALE = new ChannelScale(0.25, 0);

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final SettableLoad load = new SettableLoad(0.25, 0.02);

  private Terminal terminal(boolean interactive) {
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    return new Terminal(stream, stream, interactive, 80, Colour.PLAIN);
  }

  private SteadySensor sensor(SampleSource source) {
    return new SteadySensor(source, null, Channel.CURRENT, SCALE, 500);
  }

  private void wait(boolean interactive, double seconds) {
    SteadySensor sensor = sensor(new StreamSource(load, 1000));
    WaitLine line = new WaitLine(terminal(interactive), sensor);
    while (sensor.seconds() < seconds) {
      sensor.step();
      line.show();
    }
    line.end();
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void shouldRenewOneLineFourTimesASecondOnATerminal() {
    load.amps(100);
    wait(true, 5);
    String[] shown = said().split("\r");
    assertTrue(shown.length >= 15 && shown.length <= 22, () -> "lines: " + shown.length);
    assertTrue(Arrays.stream(shown).allMatch(line -> line.length() < 80));
    assertTrue(
        shown[9].matches("now \\d+  mean \\d+\\.\\d\\d  sd 0\\.\\d+  drift .* of 10 s *"),
        shown[9]);
    assertTrue(shown[9].contains("100"), shown[9]);
    assertEquals(0, said().chars().filter(c -> c == '\n').count());
  }

  @Test
  void shouldSaySeldomWhereNobodyWatches() {
    wait(false, 65);
    assertEquals(2, said().lines().filter(line -> line.contains("mean")).count());
  }

  @Test
  void shouldSayAfterAMinuteWhyItTakesSoLong() {
    load.drifting(0.001);
    wait(false, 100);
    assertTrue(said().contains("the level drifts by 39.98"), said());
    assertTrue(said().contains("let the load warm up, or set it again"), said());
  }

  @Test
  void shouldBlameMissingSamplesWhenTheyKeepTheTenSecondsFromBeingFull() {
    PairScript script = PairScript.at(1000).arc(100, 20, 3).gap(0.2).arc(100, 20, 2);
    SteadySensor sensor = sensor(new ScriptedSource(1000).pairs(script, 100));
    WaitLine line = new WaitLine(terminal(false), sensor);
    for (int block = 0; block < 50; block++) {
      sensor.step();
    }
    assertEquals("samples are missing (1 gaps); look at the line", line.reason());
  }

  @Test
  void shouldNotWaitForEverForASourceThatIsSilent() {
    SteadySensor sensor = sensor(new ScriptedSource(1000).silence(60));
    CommandFailedException failure =
        assertThrows(
            CommandFailedException.class,
            () -> {
              while (sensor.seconds() < 50) {
                sensor.step();
              }
            });
    assertTrue(failure.getMessage().contains("no samples for 5 s"), failure.getMessage());
    assertTrue(sensor.seconds() < 6);
  }
}
