package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.excursion;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.boothlamp.judging.Side;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.page.BoothPage;
import org.boothlamp.page.PageOptions;
import org.boothlamp.page.PageServer;
import org.boothlamp.page.SignInPort;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.LogEntries;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A school year: 180 days of 200 segments, each with three windows, three excursions, a trace. */
@Tag("quiet")
class BoothLogSpeedIT {

  private static final int DAYS = 180;
  private static final int SEGMENTS_A_DAY = 200;
  private static final int SEGMENTS = DAYS * SEGMENTS_A_DAY;
  private static final double DAY_SECONDS = 86_400;
  private static final int TRIES = 5;

  @TempDir Path folder;
  private Path path;

  @BeforeEach
  void weldForYear() {
    path = folder.resolve(BoothLog.FILE_NAME);
    try (WriterBench bench = new WriterBench(path)) {
      for (int segment = 0; segment < SEGMENTS; segment++) {
        weld(bench, segment);
        if (segment % 10 == 0) {
          bench.writer.step();
        }
      }
    }
  }

  private static void weld(WriterBench bench, int segment) {
    double start = (segment / SEGMENTS_A_DAY) * DAY_SECONDS + (segment % SEGMENTS_A_DAY) * 100;
    bench.offer(started(start, "T" + segment % 12));
    for (int i = 0; i < 40; i++) {
      bench.offer(point(start + i / (double) LogEntry.TRACE_HZ));
    }
    for (int i = 0; i < 3; i++) {
      bench.offer(excursion(start + 5 * i, 1, Quantity.VOLTS, Side.HIGH, 27));
    }
    bench.offer(ended(start, 30, SegmentEnd.ARC_OFF));
  }

  @Test
  void shouldReadDayAndYearOfSchoolYearQuickly() throws Exception {
    long day = LogEntries.FIRST_WALL_MILLIS + 100L * 86_400_000;
    double dayMillis = quickestMillis(SEGMENTS_A_DAY, day, day + 86_400_000);
    double yearMillis = quickestMillis(SEGMENTS, 0, Long.MAX_VALUE);
    double pageMillis = quickestPageMillis(day);
    System.out.printf(
        "log of %,d segments, %.0f MB: a day in %.1f ms, its page in %.1f ms, the year in %.0f ms%n",
        SEGMENTS, Files.size(path) / 1e6, dayMillis, pageMillis, yearMillis);

    assertTrue(dayMillis < 100, "a day took " + dayMillis + " ms");
    // The report of a year has a second; half of it is the aim on a machine with nothing else to
    // do.
    assertTrue(yearMillis < 1_000, "the year took " + yearMillis + " ms");
    assertTrue(pageMillis < 200, "the page of a day took " + pageMillis + " ms");
  }

  private double quickestPageMillis(long day) throws Exception {
    PageOptions options =
        new PageOptions(
            "B-07",
            Language.ENGLISH,
            Units.METRIC,
            new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
            Map.of(),
            null,
            null,
            List.of(),
            List.of(),
            40);
    SignInPort nobody = new NoSignIns();
    try (PageServer server =
        new BoothPage(options, new LiveFeed(), path, nobody, Map::of, WallClock.SYSTEM).server()) {
      server.start();
      LocalDate date = LocalDate.ofInstant(Instant.ofEpochMilli(day), ZoneId.systemDefault());
      HttpRequest request =
          HttpRequest.newBuilder(URI.create(server.url() + "/runs?day=" + date)).build();
      HttpClient client = HttpClient.newHttpClient();
      double quickest = Double.MAX_VALUE;
      for (int i = 0; i < TRIES; i++) {
        long begun = System.nanoTime();
        HttpResponse<String> page = client.send(request, HttpResponse.BodyHandlers.ofString());
        quickest = Math.min(quickest, (System.nanoTime() - begun) / 1e6);
        assertEquals(200, page.statusCode());
        assertTrue(page.body().split("<tr>").length > 100, "runs of the day");
      }
      return quickest;
    }
  }

  private static final class NoSignIns implements SignInPort {
    @Override
    public List<Choice> choices() {
      return List.of();
    }

    @Override
    public void signIn(String trainee, String procedureId, String pass) {
      throw new AssertionError("nobody signs in here");
    }

    @Override
    public void signOut() {
      throw new AssertionError("nobody signs out here");
    }
  }

  @Test
  void shouldLookAtSchoolYearAndSaveItQuickly() throws Exception {
    long begun = System.nanoTime();
    try (LogConnection log = LogFile.openForReading(path)) {
      assertEquals(LogCheck.Result.SOUND, LogCheck.run(log, () -> false));
    }
    double checkSeconds = (System.nanoTime() - begun) / 1e9;
    double saveSeconds = saveSeconds();
    System.out.printf(
        "log of %.0f MB: looked at in %.2f s, all rows saved in %.1f s%n",
        Files.size(path) / 1e6, checkSeconds, saveSeconds);
    assertTrue(checkSeconds < 5, "the look took " + checkSeconds + " s");
    assertTrue(saveSeconds < 120, "saving took " + saveSeconds + " s");
  }

  private double saveSeconds() throws Exception {
    long begun = System.nanoTime();
    try (LogConnection fresh =
            LogFile.openForWriting(folder.resolve("fresh.db"), LogFile.COMMAND_BUSY_MILLIS);
        Salvage salvage = Salvage.of(path, fresh)) {
      salvage.beginToLook();
      while (salvage.step(fresh, System::nanoTime, 100_000_000L)) {
        // until there are no more
      }
      assertEquals(SEGMENTS, fresh.number("SELECT count(*) FROM segment"));
      assertEquals(0, salvage.lostPages());
    }
    return (System.nanoTime() - begun) / 1e9;
  }

  /** Opening included; the best of a few, for other things run on this machine. */
  private double quickestMillis(int segments, long from, long until) {
    double quickest = Double.MAX_VALUE;
    for (int i = 0; i < TRIES; i++) {
      long begun = System.nanoTime();
      try (BoothLogReader reader = BoothLogReader.open(path)) {
        ShiftRecords records = reader.read(from, until);
        quickest = Math.min(quickest, (System.nanoTime() - begun) / 1e6);
        assertEquals(segments, records.runs().size());
        assertEquals(3, records.runs().get(segments - 1).excursions().size());
      }
    }
    return quickest;
  }
}
