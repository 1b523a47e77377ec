package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.PairsInMemory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the addresses of a replay answer: run 1 has a raw recording. */
class ReplayViewTest {

  @TempDir Path folder;
  private Path log;

  @BeforeEach
  void fillALog() {
    log = folder.resolve("booth.db");
    FilledLog.write(log, "B-07", 3);
  }

  private static PairsInMemory raw() {
    short[] current = new short[50_000];
    short[] voltage = new short[50_000];
    Arrays.fill(current, (short) 110);
    for (int k = 0; k < voltage.length; k++) {
      voltage[k] = (short) (k % 100 < 10 ? 3 : 22);
    }
    PairScale scale = new PairScale(new ChannelScale(1, 0), new ChannelScale(1, 0));
    return new PairsInMemory(5_000, scale, current, voltage, Long.MAX_VALUE);
  }

  private Answer get(String address) {
    Site site =
        new BoothPage(
                Visit.open(),
                new LiveFeed(),
                log,
                new Visit.Desk(),
                Map::of,
                () -> Visit.NOW_MILLIS)
            .withRecordings(segment -> segment == 1 ? raw() : null)
            .site();
    return new Visit(site).get(address);
  }

  private JsonNode json(String address) throws IOException {
    Answer answer = get(address);
    assertEquals(200, answer.status(), address);
    return new ObjectMapper().readTree(answer.text());
  }

  @Test
  void shouldSayWithoutAScriptWhatHappenedInBothRuns() {
    Answer answer = get("/replay/1?beside=2");
    assertEquals(200, answer.status());
    String page = answer.text();
    assertTrue(page.contains("Outside: volts above 26"), page);
    assertTrue(page.contains("What happened in the other run"), page);
    assertFalse(page.contains(" style="), "no style inside the page");
    assertFalse(page.contains("<script>"), "no script inside the page");
    assertTrue(
        answer.headers().get("Content-Security-Policy").endsWith("; media-src blob:"),
        answer.headers().toString());
  }

  @Test
  void shouldGiveTheScriptAllFramesOfBothRuns() throws IOException {
    JsonNode data = json("/replay/1/data?beside=2");
    assertEquals(200, data.get("frames").asInt());
    assertEquals(200, data.get("one").get("amps").size());
    assertEquals(2, data.get("beside").get("id").asInt());
    assertEquals("green", data.get("one").get("signal").get(50).asText());
    assertFalse(json("/replay/1/data").has("beside"));
  }

  @Test
  void shouldZoomDownToSinglePairs() throws IOException {
    JsonNode zoom = json("/replay/1/zoom?from=1&to=1.2&columns=2000");
    assertEquals(1_000, zoom.get("lowest_volts").size());
    assertTrue(zoom.get("single_pairs").asBoolean());
    assertEquals(10, zoom.get("short_circuits").asInt());
    assertEquals(2_000, json("/replay/1/zoom?columns=999999").get("lowest_volts").size());
  }

  @Test
  void shouldAnswerWithTheSoundOfAStretch() {
    Answer answer = get("/replay/1/sound?from=1&to=2");
    assertEquals(200, answer.status());
    assertEquals("audio/wav", answer.headers().get("Content-Type"));
    assertEquals(44 + 2 * 5_000, answer.body().length);
  }

  @ParameterizedTest
  @CsvSource({
    "/replay/99, 404",
    "/replay/, 404",
    "/replay/1/, 404",
    "/replay/1/other, 404",
    "/replay/1/data/x, 404",
    "/replay/x, 404",
    "/replay/1?beside=x, 404",
    "/replay/1?beside=99, 404",
    "/replay/2/zoom, 404",
    "/replay/2/sound, 404",
    "/replay/1/zoom?from=20&to=21, 404",
    "/replay/1/zoom?from=1e9, 400",
    "/replay/1/zoom?from=NaN, 400"
  })
  void shouldRefuseWhatThereIsNot(String address, int status) {
    assertEquals(status, get(address).status(), address);
  }

  @Test
  void shouldBeLinkedFromTheRun() {
    assertTrue(get("/runs/1").text().contains("href=\"/replay/1\""));
  }
}
