package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.Function;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.WorkerThread;
import org.boothlamp.testing.PtyPair;
import org.boothlamp.testing.ScriptedMeter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The meter over a pseudo-terminal and the real serial library. */
class ScpiMeterIT {

  private static final String QUERY = "MEAS:VOLT:DC?";

  @TempDir Path folder;

  private PtyPair cable;
  private ScriptedMeter scripted;
  private ScpiMeter meter;

  @BeforeEach
  void connect() throws IOException {
    cable = new PtyPair(folder);
  }

  @AfterEach
  void disconnect() throws IOException {
    if (meter != null) {
      meter.close();
    }
    if (scripted != null) {
      scripted.close();
    }
    cable.close();
  }

  private void answering(Function<String, String> answers) throws IOException {
    scripted = new ScriptedMeter(cable.boardSide(), answers);
    SerialLine line = new SerialLine(cable.hostSide().toString(), 9600);
    line.open();
    meter = new ScpiMeter(line, "bench");
  }

  private void answering(String... inTurn) throws IOException {
    Deque<String> left = new ArrayDeque<>(List.of(inTurn));
    answering(
        command -> {
          String next = left.poll();
          return next == null || next.isEmpty() ? null : next;
        });
  }

  private SourceException refusal() {
    return assertThrows(SourceException.class, () -> meter.read(QUERY));
  }

  @Test
  void shouldAskWhoItIsAndReadEveryFormOfNumber() throws IOException {
    answering(ScriptedMeter.IDENTITY + "\r\n", "24\n", "+2.4310000E+01\r\n", "-.5\n");
    assertEquals(ScriptedMeter.IDENTITY, meter.identity());
    assertEquals(24, meter.read(QUERY));
    assertEquals(24.31, meter.read("READ?"));
    assertEquals(-0.5, meter.read(QUERY));
    assertEquals(List.of("*IDN?", QUERY, "READ?", QUERY), scripted.heard());
    assertEquals(0, meter.askedAgain());
  }

  @Test
  void shouldAskAgainAfterAGarbledAnswer() throws IOException {
    answering("2\u00004.\u00FF1\n", "24.1\n");
    assertEquals(24.1, meter.read(QUERY));
    assertEquals(1, meter.askedAgain());
  }

  @Test
  void shouldShowAnAnswerThatStaysGarbled() throws IOException {
    answering("garble\u0001\n", "garble\u0001\n", "garble\u0001\n");
    SourceException refusal = refusal();
    assertEquals(Reason.MALFORMED, refusal.reason());
    assertTrue(refusal.getMessage().contains("\"garble\\x01\""), refusal.getMessage());
    assertTrue(refusal.getMessage().contains("line speed"), refusal.getMessage());
  }

  @Test
  void shouldSayThatAMeterDoesNotAnswerAfterThreeTries() throws IOException {
    answering();
    long start = System.nanoTime();
    SourceException refusal = refusal();
    assertEquals(Reason.FAILED, refusal.reason());
    assertTrue(refusal.getMessage().contains("no answer to " + QUERY), refusal.getMessage());
    assertEquals(3, scripted.heard().size());
    double seconds = (System.nanoTime() - start) / 1e9;
    assertTrue(seconds > 5.9 && seconds < 12, () -> "gave up after " + seconds);
  }

  @Test
  void shouldGoOnAfterOneTimeOut() throws IOException {
    answering("", "24.2\n");
    assertEquals(24.2, meter.read(QUERY));
  }

  @Test
  void shouldNotTakeALateAnswerForTheNextOne() throws IOException {
    answering(
        new Function<>() {
          private int count;

          @Override
          public String apply(String command) {
            // two answers to one query: the second belongs to nobody
            return ++count == 1 ? "1\n999\n" : "2\n";
          }
        });
    assertEquals(1, meter.read(QUERY));
    meter.tell("SYST:REM");
    assertEquals(2, meter.read(QUERY));
  }

  @Test
  void shouldSayThatTheMeterIsOverloaded() throws IOException {
    answering("9.90000000E+37\n");
    assertTrue(refusal().getMessage().contains("an overload; choose a larger range"));
    assertEquals(1, scripted.heard().size());
  }

  @Test
  void shouldSayThatTheMeterHasNoNumber() throws IOException {
    answering("+9.91000000E+37\r\n");
    assertTrue(refusal().getMessage().contains("not-a-number"));
  }

  @Test
  void shouldNotWaitForTheEndOfALineThatNeverEnds() throws IOException {
    answering("1".repeat(400), "1".repeat(400), "1".repeat(400));
    assertEquals(Reason.MALFORMED, refusal().reason());
  }

  @Test
  void shouldSayThatTheCableWasPulled() throws IOException {
    answering("1\n");
    assertEquals(1, meter.read(QUERY));
    cable.cut();
    SourceException refusal = refusal();
    assertTrue(refusal.getMessage().contains("bench") || refusal.reason() == Reason.MISSING);
  }

  @Test
  void shouldHandReadingsOnInTheChannelsUnitAndKeepTheFailure() throws Exception {
    answering("0.001\n", "0.002\n", "9.9E37\n");
    MeterPoller poller = new MeterPoller(meter, QUERY, 10_000);
    WorkerThread thread =
        new WorkerThread(
            poller,
            thrown -> {
              throw new AssertionError(thrown);
            });
    thread.start();
    thread.join();
    assertEquals(10, poller.poll());
    assertEquals(20, poller.poll());
    assertNull(poller.poll());
    assertTrue(poller.failure().getMessage().contains("overload"));
  }
}
