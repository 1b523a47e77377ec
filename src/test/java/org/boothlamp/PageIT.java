package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.boothlamp.acquisition.RecordingScale;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a monitor that runs, and those who want to hold it up. */
class PageIT {

  private static final int RATE = 5_000;

  /**
   * From the pair that moves the average out: 0.1 s to the next judging, 0.01 s of the slot, 5 ms.
   */
  private static final long LATEST_NANOS = 115_000_000L;

  /** Other programs of a shared machine may hold up all of it: the best of a few counts. */
  private static final int ROUNDS = 3;

  private static final String QUICK =
      "\n[averaging]\naverage_s = 0.1\n[judging]\nsettle_s = 0.1\nhold_s = 0\n";

  @TempDir Path folder;

  /** An arc that leaves its window and comes back all the time, so that the lamp has work to do. */
  private static void restless(PageBooth booth, double seconds) throws IOException {
    PairScript script = PairScript.at(RATE).idle(1);
    for (double length = 0; length < seconds; length += 0.6) {
      script.arc(110, 23, 0.3).arc(140, 23, 0.3);
    }
    PairScript.Part part = script.idle(1).parts().get(0);
    Path wav = booth.folder().settings().resolveSibling("restless.wav");
    ByteBuffer pairs =
        ByteBuffer.allocate(part.current().length * 4).order(ByteOrder.LITTLE_ENDIAN);
    for (int k = 0; k < part.current().length; k++) {
      pairs.putShort(part.current()[k]).putShort(part.voltage()[k]);
    }
    AudioFormat format = new AudioFormat(RATE, 16, 2, true, false);
    AudioInputStream sound =
        new AudioInputStream(
            new ByteArrayInputStream(pairs.array()), format, part.current().length);
    AudioSystem.write(sound, AudioFileFormat.Type.WAVE, wav.toFile());
    RecordingScale.write(RecordingScale.fileBeside(wav), PairScript.SCALE);
    booth
        .folder()
        .source("[source]\nkind = \"recording\"\nfile = \"" + wav + "\"\nspeed = \"real-time\"\n");
  }

  @Test
  void shouldKeepTheLampInTimeWhateverTwoHundredClientsDo() throws Exception {
    try (PageBooth booth = new PageBooth(folder, "booth")) {
      restless(booth, 60);
      booth.start("B-07", "", QUICK).awaitPage();
      long latest = Long.MAX_VALUE;
      for (int round = 0; round < ROUNDS && latest > LATEST_NANOS; round++) {
        latest = latestUnderAttack(booth);
      }
      assertTrue(latest <= LATEST_NANOS, "latest: " + latest);
      booth.daemon().await("the page is there again", () -> status(booth, "/") == 200);
      assertTrue(booth.daemon().isAlive());
    }
  }

  /** How late the latest change of the lamp is while 200 clients do their worst, ns. */
  private static long latestUnderAttack(PageBooth booth) throws IOException {
    try (HostileClients clients = new HostileClients(booth.port())) {
      long from = System.nanoTime();
      clients.neverRead(80);
      clients.neverFinish(60);
      clients.neverSpeak(60);
      List<CompletableFuture<Integer>> askers = new ArrayList<>();
      for (String path : List.of("/", "/runs", "/sign-in", "/static/uPlot.min.js")) {
        askers.add(CompletableFuture.supplyAsync(() -> clients.ask(path, 5)));
      }
      int answers = askers.stream().mapToInt(CompletableFuture::join).sum();
      long[] late = latenesses(booth.trace(), from);
      System.out.printf(
          Locale.ROOT,
          "%d connections held, %d requests answered: %d changes of the lamp, median %.1f ms, latest"
              + " %.1f ms after their samples%n",
          clients.count(),
          answers,
          late.length,
          late[late.length / 2] / 1e6,
          late[late.length - 1] / 1e6);
      assertTrue(late.length >= 8, "changes of the lamp: " + late.length);
      assertFalse(booth.daemon().err().contains("ERROR"), booth.daemon().err());
      return late[late.length - 1];
    }
  }

  private static long[] latenesses(LampTrace trace, long fromNanos) {
    return trace.rows().stream()
        .filter(row -> row.monotonicNanos() > fromNanos)
        .flatMapToLong(row -> LongStream.of(row.monotonicNanos() - row.samplesNanos()))
        .sorted()
        .toArray();
  }

  private static int status(PageBooth booth, String path) {
    try (HostileClients one = new HostileClients(booth.port())) {
      return one.status("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
    }
  }

  @Test
  void shouldSurviveRequestsThatNoBrowserSends() throws Exception {
    try (PageBooth booth = new PageBooth(folder, "booth").start("B-07", "", "").awaitPage();
        HostileClients client = new HostileClients(booth.port())) {
      String host = " HTTP/1.1\r\nHost: 127.0.0.1\r\n";
      assertEquals(404, client.status("GET /../../../etc/passwd" + host + "\r\n"));
      assertEquals(404, client.status("GET /static/..%2f..%2fbooth.toml" + host + "\r\n"));
      assertEquals(404, client.status("GET /runs/1%00.html" + host + "\r\n"));
      assertEquals(414, client.status("GET /?" + "a".repeat(5_000) + host + "\r\n"));
      assertEquals(421, client.status("GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n"));
      assertTrue(client.status("GET /\u0000 HTTP/1.1\r\n\r\n") != 200);
      assertTrue(client.status("GET / HTTP/1.1\r\nX: " + "a".repeat(50_000) + "\r\n\r\n") != 200);
      assertTrue(client.status("\u0016\u0003\u0001" + "x".repeat(300) + "\r\n\r\n") != 200);
      String form = "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: ";
      String post = "POST /sign-in" + host;
      assertEquals(413, client.status(post + form + "9000\r\n\r\n" + "a".repeat(9_000)));
      assertEquals(403, client.status(post + form + "5\r\n\r\na=b&c"));
      assertEquals(415, client.status(post + "Content-Length: 2\r\n\r\n{}"));
      assertEquals(405, client.status("DELETE /runs" + host + "\r\n"));
      String notes = "trainee=%3Cimg+src%3Dx%3E%00%E2%80%AE" + "A".repeat(3_000);
      assertEquals(
          403, client.status(post + form + notes.length() + "\r\n\r\n" + notes), "no form token");
      assertEquals(200, status(booth, "/"));
      assertFalse(booth.daemon().err().contains("ERROR"), booth.daemon().err());
    }
  }

  /**
   * More than may be connected at once leave without a word, and more than there are threads hang.
   */
  @Test
  void shouldForgetWhoeverLeft() throws Exception {
    String live = "GET /live/stream HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";
    try (PageBooth booth = new PageBooth(folder, "booth").start("B-07", "", "").awaitPage()) {
      for (int round = 0; round < 2; round++) {
        try (HostileClients clients = new HostileClients(booth.port())) {
          clients.neverFinish(140);
        }
      }
      try (HostileClients clients = new HostileClients(booth.port())) {
        int looked = 0;
        for (int tries = 0; tries < 5_000 && looked < 180; tries++) {
          looked += clients.status(live) == 200 ? 1 : 0;
        }
        assertEquals(180, looked, "let in");
      }
      booth.daemon().await("the page is there again", () -> status(booth, "/") == 200);
      assertFalse(booth.daemon().err().contains("ERROR"), booth.daemon().err());
    }
  }

  /** Longer than any limit of time that ordinary answers have. */
  @Test
  void shouldStayOpenForWhoeverLooksLiveAndEndWithTheMonitor() throws Exception {
    try (PageBooth booth = new PageBooth(folder, "booth").start("B-07", "", "").awaitPage()) {
      HttpClient client = HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
      HttpRequest live =
          HttpRequest.newBuilder(URI.create(booth.origin() + "/live/stream")).build();
      HttpResponse<Stream<String>> stream = client.send(live, BodyHandlers.ofLines());
      assertEquals("text/event-stream", stream.headers().firstValue("Content-Type").orElse(""));
      CompletableFuture<Long> lines = CompletableFuture.supplyAsync(() -> stream.body().count());
      Thread.sleep(4_500);
      assertFalse(lines.isDone(), "cut off");
      booth.daemon().terminate();
      long events = lines.exceptionally(cut -> -1L).join();
      assertTrue(events == -1 || events > 3 * 30, "lines: " + events);
    }
  }

  @Test
  void shouldRunWithoutItsPageIfTheAddressIsTaken() throws Exception {
    try (PageBooth first = new PageBooth(folder, "one").start("B-07", "", "").awaitPage();
        PageBooth second = new PageBooth(folder, "two", first.port()).start("B-08", "", "")) {
      second.daemon().awaitSaid("the page cannot listen at 127.0.0.1:" + first.port());
      second.daemon().awaitSaid("end the other program, or correct page.address and page.port");
      second.daemon().await("the lamp works", () -> second.trace().shows("idle"));
      assertTrue(second.daemon().isAlive());
    }
  }
}
