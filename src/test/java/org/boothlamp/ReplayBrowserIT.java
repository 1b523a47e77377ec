package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.boothlamp.acquisition.RawRun;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.page.BoothPage;
import org.boothlamp.page.PageOptions;
import org.boothlamp.page.PageServer;
import org.boothlamp.page.SignInPort;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.LogEntries;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** Runs of a log again, in a real browser: run 1 has a raw recording, run 4 is a reference weld. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReplayBrowserIT {

  private static final int RATE = 5_000;
  private static final int SHORT_EVERY_PAIRS = RATE / 40;
  private static final int SHORT_PAIRS = 15;
  private static final double RUN_SECONDS = 10;

  private PageServer server;
  private Browser browser;

  @BeforeAll
  void start(@TempDir Path folder) throws IOException {
    assumeTrue(Browser.isThere(), "needs the packages chromium and chromium-driver");
    Path log = folder.resolve("booth.db");
    FilledLog.write(log, "B-07", 5);
    new Beads(log, () -> LogEntries.FIRST_WALL_MILLIS)
        .markReference(4, "hold it like this", EnteredBy.INSTRUCTOR);
    Path wav = recording(folder.resolve("run.wav"));
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
            4);
    server =
        new BoothPage(
                options,
                new LiveFeed(),
                log,
                new NoSignIns(),
                Map::of,
                () -> LogEntries.FIRST_WALL_MILLIS)
            .withRecordings(segment -> segment == 1 ? RawRun.open(wav) : null)
            .server();
    server.start();
    browser = new Browser();
  }

  /** Half a second of nothing, then an arc with 40 short circuits a second. */
  private static Path recording(Path wav) {
    PairScale scale = new PairScale(new ChannelScale(0.1, 0), new ChannelScale(0.01, 0));
    int before = RATE / 2;
    int pairs = before + (int) (RUN_SECONDS * RATE);
    short[] current = new short[pairs];
    short[] voltage = new short[pairs];
    Arrays.fill(voltage, 0, before, (short) 7_000);
    for (int k = before; k < pairs; k++) {
      boolean shorted = (k - before) % SHORT_EVERY_PAIRS >= SHORT_EVERY_PAIRS - SHORT_PAIRS;
      current[k] = (short) (shorted ? 1_800 : 1_200);
      voltage[k] = (short) (shorted ? 300 : 1_900 + k % 7 * 10);
    }
    try (RecordingWriter writer = new RecordingWriter(wav, RATE, scale)) {
      for (int at = 0; at < pairs; at += 1_000) {
        int end = Math.min(pairs, at + 1_000);
        writer.write(
            Arrays.copyOfRange(current, at, end), Arrays.copyOfRange(voltage, at, end), end - at);
      }
    }
    return wav;
  }

  @AfterAll
  void end() throws IOException {
    try {
      if (browser != null) {
        assertEquals(List.of(), browser.complaints(), "console");
      }
    } finally {
      if (browser != null) {
        browser.close();
      }
      if (server != null) {
        server.close();
      }
    }
  }

  private void open(String address) {
    browser.open(server.url() + address);
    browser.await(
        "the replay", () -> "true".equals(browser.find("#replay").getDomAttribute("data-ready")));
  }

  private double second() {
    return Double.parseDouble(browser.text("#seconds").replace(" s", ""));
  }

  private void press(CharSequence... keys) {
    browser.find("#replay").sendKeys(keys);
  }

  @Test
  void shouldPlayAtTheSpeedAskedForAndHold() {
    open("/replay/1");
    new Select(browser.find("#speed")).selectByValue("0.5");
    browser.run("window.begun = performance.now(); document.getElementById('play').click();");
    browser.await("half a second of the run", () -> second() >= 0.5);
    press(Keys.SPACE);
    double played = second();
    double waited =
        ((Number) browser.run("return (performance.now() - window.begun) / 1000;")).doubleValue();
    assertTrue(played <= 0.5 * waited + 0.06, played + " s of the run in " + waited + " s");
    assertEquals("Play", browser.text("#play"));
    assertEquals(played, second());
  }

  @Test
  void shouldStepFromMomentToMomentWithKeysAndButtons() {
    open("/replay/1");
    press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
    assertEquals(0.1, second(), 1e-9);
    press(Keys.ARROW_LEFT);
    assertEquals(0.05, second(), 1e-9);
    press("n");
    assertEquals(5, second(), 1e-9);
    assertTrue(
        browser.text("#one .sentence").startsWith("Outside: volts above 26 V for 1.5"),
        browser.text("#one .sentence"));
    press("p");
    assertEquals(0, second(), 1e-9);
    browser.find("#next").click();
    browser.find("#on").click();
    assertEquals(5.05, second(), 1e-9);
    browser.find("#position").sendKeys(Keys.HOME);
    assertEquals(0, second(), 1e-9);
    List<WebElement> moments = browser.all(".moment-link");
    moments.get(moments.size() - 2).click();
    assertEquals(6.5, second(), 1e-9);
    assertEquals("green", browser.find("#one").getDomAttribute("data-signal"));
  }

  @Test
  void shouldZoomIntoSingleShortCircuits() throws IOException {
    open("/replay/1");
    browser.await(
        "the raw recording", () -> browser.text("#zoom-says").contains("short circuits: "));
    assertEquals(RUN_SECONDS * 40, shorts(), 1);
    press("n");
    for (int k = 0; k < 6; k++) {
      press("+");
    }
    browser.await("single pairs", () -> browser.text("#zoom-says").contains("Every pair"));
    String says = browser.text("#zoom-says");
    assertTrue(says.startsWith("4.922 to 5.078 s:"), says);
    assertEquals(6, shorts(), 1);
    assertTrue((Boolean) browser.run(RAW_HAS_INK), "the raw recording is drawn");
    assertEquals(List.of(), browser.violations());
    browser.run("document.getElementById('title-raw').scrollIntoView();");
    browser.picture("replay-zoom");
    browser.find("#whole").click();
    browser.await("the whole run", () -> browser.text("#zoom-says").startsWith("0.000 to 10.000"));
  }

  private int shorts() {
    return Integer.parseInt(
        browser.text("#zoom-says").replaceAll("(?s).*short circuits: (\\d+)\\..*", "$1"));
  }

  private static final String RAW_HAS_INK =
      """
      const canvas = document.querySelector('#raw-volts canvas');
      const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
      let dark = 0;
      for (let k = 0; k < data.length; k += 4) {
        dark += data[k + 3] > 200 && data[k] < 40 && data[k + 1] < 60 ? 1 : 0;
      }
      return dark > 100;
      """;

  @Test
  void shouldZoomByDraggingOverAChart() {
    open("/replay/1");
    List<?> box =
        (List<?>)
            browser.run(
                """
                const over = document.querySelector('#chart-volts .u-over');
                over.scrollIntoView({ block: 'center' });
                const box = over.getBoundingClientRect();
                return [box.left, box.top + 20, box.width];
                """);
    double left = ((Number) box.get(0)).doubleValue();
    double width = ((Number) box.get(2)).doubleValue();
    double top = ((Number) box.get(1)).doubleValue();
    mouse("mouseMoved", left + 0.2 * width, top);
    mouse("mousePressed", left + 0.2 * width, top);
    mouse("mouseMoved", left + 0.25 * width, top);
    mouse("mouseMoved", left + 0.3 * width, top);
    mouse("mouseReleased", left + 0.3 * width, top);
    browser.await("a stretch", () -> !browser.text("#zoom-says").startsWith("0.000 to 10"));
    String[] says = browser.text("#zoom-says").split(" ");
    assertEquals(2, Double.parseDouble(says[0]), 0.03);
    assertEquals(3, Double.parseDouble(says[2]), 0.03);
  }

  private void mouse(String type, double x, double y) {
    browser.cdp(
        "Input.dispatchMouseEvent",
        Map.of("type", type, "x", x, "y", y, "button", "left", "buttons", 1, "clickCount", 1));
  }

  @Test
  void shouldLetTheArcBeHeard() {
    open("/replay/1");
    browser.find("#listen").click();
    browser.await(
        "a sound that can be played",
        () -> Boolean.TRUE.equals(browser.run("return sound.readyState >= 2;")));
    assertEquals(RUN_SECONDS, ((Number) browser.run("return sound.duration;")).doubleValue(), 0.01);
    Boolean seeks =
        (Boolean)
            browser.run(
                "sound.pause(); sound.currentTime = 6; return Math.abs(sound.currentTime - 6) < 0.1;");
    assertTrue(seeks, "any moment of it can be heard");
  }

  @Test
  void shouldLayAReferenceWeldBeside() throws IOException {
    open("/replay/1");
    Select choice = new Select(browser.find("#beside-run"));
    assertTrue(
        choice.getOptions().get(1).getText().startsWith("reference weld · "),
        choice.getOptions().get(1).getText());
    choice.selectByIndex(1);
    browser.find("form.beside button").click();
    browser.await(
        "both runs",
        () ->
            !browser.all("#beside").isEmpty()
                && "true".equals(browser.find("#replay").getDomAttribute("data-ready")));
    press("n");
    assertTrue(browser.text("#one .sentence").startsWith("Outside"), browser.text("#one"));
    assertTrue(browser.text("#beside .values").contains(" A · "), browser.text("#beside"));
    assertTrue(browser.text("#beside").contains("reference weld"), browser.text("#beside"));
    assertTrue(browser.text("#beside").contains("hold it like this"), browser.text("#beside"));
    assertEquals(3, browser.all("tbody tr:first-child > *").size());
    assertEquals(List.of(), browser.violations());
    for (int width : new int[] {320, 390, 1024, 1920}) {
      browser.size(width, 900);
      Object wide = browser.run("return document.documentElement.scrollWidth - innerWidth;");
      assertTrue(((Number) wide).intValue() <= 0, "too wide by " + wide + " at " + width);
      browser.picture("replay-beside-" + width);
    }
    browser.size(1024, 768);
  }

  @Test
  void shouldSayThatThereIsNoRawRecordingOfARunAndGoBackToIt() {
    open("/replay/2");
    assertTrue(browser.text(".raw").contains("There is no raw recording of this run"));
    browser.find("main a[href='/runs/2']").click();
    browser.await("the run", () -> browser.text("h1").equals("Run 2"));
    browser.find("a[href='/replay/2']").click();
    browser.await("its replay", () -> browser.text("h1").equals("Run 2 again"));
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
}
