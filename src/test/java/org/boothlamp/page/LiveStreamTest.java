package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;

/** Live values to many who look, with clocks turned by hand. */
class LiveStreamTest {

  private static final int RATE = 5_000;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final Deadlines deadlines = new Deadlines(clock);
  private final Monitor monitor =
      new Monitor(
          new ScriptedSource(RATE).pairs(PairScript.at(RATE).idle(1).arc(130, 23, 20).idle(2), 50),
          new SignalRecorder(),
          new EntryCollector(),
          () -> 0,
          new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
          new Assignment(
              "T\"</script>\u2028",
              Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), Plans.volts(20, 26))));
  private final LiveStream stream =
      new LiveStream(new LiveFrames("B-07", monitor.live()), deadlines, clock, 10);

  private final class Sink implements LiveSink {
    private final LiveKind kind;
    private final String address;
    private final List<String> events = new ArrayList<>();
    private boolean gone;
    private boolean slow;
    private boolean closed;

    Sink(LiveKind kind, String address) {
      this.kind = kind;
      this.address = address;
    }

    @Override
    public String address() {
      return address;
    }

    @Override
    public LiveKind kind() {
      return kind;
    }

    @Override
    public void send(byte[] bytes) throws IOException {
      if (gone) {
        throw new IOException("broken pipe");
      }
      if (slow) {
        clock.advanceMillis(150);
        deadlines.look();
      }
      events.add(new String(bytes, StandardCharsets.UTF_8));
    }

    @Override
    public void close() {
      closed = true;
    }

    JsonNode last(String event) throws IOException {
      String marker = "event: " + event + "\ndata: ";
      for (int k = events.size() - 1; k >= 0; k--) {
        int at = events.get(k).lastIndexOf(marker);
        if (at >= 0) {
          String rest = events.get(k).substring(at + marker.length());
          return new ObjectMapper().readTree(rest.substring(0, rest.indexOf("\n\n")));
        }
      }
      throw new AssertionError("no event " + event);
    }
  }

  private Sink sink(LiveKind kind) {
    Sink sink = new Sink(kind, "192.0.2." + stream.count());
    assertTrue(stream.add(sink));
    return sink;
  }

  private void run(double seconds) {
    for (int k = 0; k < seconds * RATE / 50; k++) {
      monitor.step();
    }
  }

  @Test
  void shouldTellWhoeverComesInTheMiddleOfARunAllOfIt() throws IOException {
    run(4);
    Sink sink = sink(LiveKind.CHART);
    stream.tick();
    JsonNode live = sink.last("live");
    assertEquals("red", live.get("signal").asText());
    assertEquals(130, live.get("amps_a").asDouble(), 0.2);
    assertEquals(60, live.get("points").get("t_s").size(), 2);
    assertEquals(0.05, live.get("points").get("t_s").get(0).asDouble(), 1e-9);
    JsonNode booth = sink.last("booth");
    assertEquals("B-07", booth.get("booth").asText());
    assertEquals("T\"</script>\u2028", booth.get("trainee").asText());
    assertEquals(125, booth.get("windows").get(0).get("high").asDouble());
  }

  @Test
  void shouldTellOnlyWhatIsNewAfterThat() throws IOException {
    Sink sink = sink(LiveKind.CHART);
    run(4);
    stream.tick();
    run(0.1);
    stream.tick();
    assertEquals(2, sink.events.size());
    assertFalse(sink.events.get(1).contains("event: booth"), "nobody else has signed in");
    assertEquals(2, sink.last("live").get("points").get("run").size());
    monitor.assign(new Assignment("T-05", null));
    run(30);
    stream.tick();
    assertEquals("T-05", sink.last("booth").get("trainee").asText());
  }

  @Test
  void shouldSpareTheClassScreenThePoints() throws IOException {
    run(4);
    Sink sink = sink(LiveKind.LAMP);
    stream.tick();
    assertFalse(sink.last("live").has("points"));
  }

  @Test
  void shouldNotTrustAMonitorThatStandsStill() throws IOException {
    run(4);
    Sink sink = sink(LiveKind.LAMP);
    stream.tick();
    assertFalse(sink.last("live").get("stale").asBoolean());
    clock.advanceMillis(501);
    stream.tick();
    JsonNode live = sink.last("live");
    assertTrue(live.get("stale").asBoolean());
    assertEquals("fault", live.get("signal").asText());
    assertTrue(live.get("amps_a").isNull());
  }

  @Test
  void shouldForgetWhoeverHasLeft() {
    Sink left = sink(LiveKind.LAMP);
    Sink stays = sink(LiveKind.LAMP);
    stream.tick();
    left.gone = true;
    stream.tick();
    assertTrue(left.closed);
    assertEquals(1, stream.count());
    assertEquals(2, stays.events.size());
  }

  @Test
  void shouldCutOffWhoeverIsTooSlowAndServeTheNext() {
    Sink slow = sink(LiveKind.LAMP);
    Sink next = sink(LiveKind.LAMP);
    stream.tick();
    slow.slow = true;
    stream.tick();
    assertTrue(slow.closed);
    assertFalse(next.closed);
    assertEquals(2, next.events.size());
    assertFalse(Thread.currentThread().isInterrupted(), "the interrupt was for the slow one only");
  }

  @Test
  void shouldLetNoMoreLookThanItIsSetTo() {
    for (int k = 0; k < 10; k++) {
      sink(LiveKind.LAMP);
    }
    assertTrue(stream.isFull());
    assertFalse(stream.add(new Sink(LiveKind.LAMP, "192.0.2.99")));
  }

  /** A tablet that loses its network again and again leaves connections that nobody has closed. */
  @Test
  void shouldCutOffTheOldestOfAnAddressForItsNewest() {
    List<Sink> tablet = new ArrayList<>();
    for (int k = 0; k <= LiveStream.MOST_OF_ADDRESS; k++) {
      Sink sink = new Sink(LiveKind.LAMP, "192.0.2.7");
      assertTrue(stream.add(sink));
      tablet.add(sink);
      stream.tick();
    }
    assertTrue(tablet.get(0).closed);
    assertFalse(tablet.get(1).closed);
    assertEquals(LiveStream.MOST_OF_ADDRESS, stream.count());
  }

  @Test
  void shouldEndWithEveryConnectionClosed() {
    Sink looking = sink(LiveKind.LAMP);
    stream.tick();
    Sink waiting = sink(LiveKind.LAMP);
    stream.close();
    assertTrue(looking.closed && waiting.closed);
    assertEquals(0, stream.count());
    assertFalse(stream.add(new Sink(LiveKind.LAMP, "192.0.2.99")));
  }
}
