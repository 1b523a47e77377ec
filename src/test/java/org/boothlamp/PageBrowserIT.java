package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.Select;

/** The page of two simulated booths in a real browser. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PageBrowserIT {

  private static final double LATEST_SECONDS = 0.3;

  /** A signal shorter than this may be over before the page is told, ten times a second. */
  private static final double TOLD_SECONDS = 0.25;

  private PageBooth booth;
  private PageBooth other;
  private Browser browser;

  @BeforeAll
  void start(@TempDir Path folder) throws Exception {
    assumeTrue(Browser.isThere(), "needs the packages chromium and chromium-driver");
    booth = new PageBooth(folder, "one");
    other = new PageBooth(folder, "two");
    FilledLog.write(booth.folder().log(), "B-07", 12);
    booth.start("B-07", "booths = [\"" + other.origin() + "\"]\n", "");
    other.start("B-08", "class_view_from = [\"" + booth.origin() + "\"]\n", "");
    browser = new Browser();
    booth.awaitPage();
    other.awaitPage();
  }

  @AfterAll
  void end() throws IOException {
    try {
      if (browser != null) {
        assertEquals(List.of(), browser.complaints(), "console");
        List<String> elsewhere =
            browser.requests().stream()
                .filter(url -> !url.startsWith(booth.origin() + "/"))
                .filter(url -> !url.startsWith(other.origin() + "/live/stream"))
                .filter(url -> !url.startsWith("data:"))
                .toList();
        assertEquals(List.of(), elsewhere, "requests to other addresses");
      }
    } finally {
      close(browser);
      close(booth);
      close(other);
    }
  }

  private static void close(AutoCloseable part) {
    if (part != null) {
      try {
        part.close();
      } catch (Exception failure) {
        throw new AssertionError("does not close", failure);
      }
    }
  }

  /** Notes each signal that the page shows with the time of day, which all processes share. */
  private static final String OBSERVE =
      """
      window.seen = [];
      const now = document.getElementById('now');
      new MutationObserver(() => window.seen.push(
          now.dataset.signal + ' ' + (performance.timeOrigin + performance.now())))
          .observe(now, { attributes: true, attributeFilter: ['data-signal'] });
      """;

  @Test
  void shouldFollowTheLampOfASimulatedBooth() throws Exception {
    double offsetMillis = System.currentTimeMillis() - System.nanoTime() / 1e6;
    browser.open(booth.origin() + "/");
    browser.await("the first signal", () -> !shownSignal().equals("none"));
    browser.run(OBSERVE);
    double fromMillis = System.currentTimeMillis() + 500;
    browser.await("a green lamp", () -> seen().stream().anyMatch(row -> row.startsWith("green")));
    Thread.sleep(500);
    List<Double> delays = new ArrayList<>();
    List<LampTrace.Row> rows = booth.trace().rows();
    for (int k = 0; k < rows.size(); k++) {
      double millis = rows.get(k).monotonicNanos() / 1e6 + offsetMillis;
      boolean held =
          k + 1 == rows.size()
              || rows.get(k + 1).monotonicNanos() - rows.get(k).monotonicNanos()
                  > TOLD_SECONDS * 1e9;
      if (millis > fromMillis && held) {
        delays.add(delaySeconds(rows.get(k).signal(), millis));
      }
    }
    System.out.printf(Locale.ROOT, "page after the lamp: %s s%n", delays);
    assertTrue(!delays.isEmpty(), "no change was seen");
    delays.forEach(delay -> assertTrue(delay <= LATEST_SECONDS, "page after lamp: " + delays));
    assertTrue(browser.text("#amps").matches("\\d+\\.\\d"), browser.text("#amps"));
    assertEquals("95–125 A", browser.text("#amps-window"));
    assertTrue(Double.parseDouble(browser.text("#amps")) > 50);
    assertTrue((Boolean) browser.run(CHART_HAS_INK), "the strip chart is drawn");
    browser.picture("live-arc");
  }

  private static final String CHART_HAS_INK =
      """
      const canvas = document.querySelector('#chart-amps canvas');
      const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
      let dark = 0;
      for (let k = 0; k < data.length; k += 4) {
        dark += data[k + 3] > 200 && data[k] < 40 && data[k + 1] < 60 ? 1 : 0;
      }
      return dark > 100;
      """;

  private String shownSignal() {
    return browser.find("#now").getDomAttribute("data-signal");
  }

  private List<String> seen() {
    return ((List<?>) browser.run("return window.seen;")).stream().map(Object::toString).toList();
  }

  /** From the lamp's change to the page's next change to the same signal. */
  private double delaySeconds(String signal, double millis) {
    for (String row : seen()) {
      String[] parts = row.split(" ");
      double at = Double.parseDouble(parts[1]);
      if (parts[0].equals(signal) && at > millis - 20) {
        return (at - millis) / 1e3;
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  @Test
  void shouldBeClickedThrough() throws IOException {
    browser.open(booth.origin() + "/");
    click("/sign-in");
    assertEquals(List.of(), browser.violations());
    browser.find("#trainee").sendKeys("T-04");
    new Select(browser.find("#weld")).selectByValue("S-3F-18/fill");
    browser.find("form.entry button[type=submit]").click();
    browser.await("the first page again", () -> !browser.all("#now").isEmpty());
    try (BoothLogReader log = BoothLogReader.open(booth.folder().log())) {
      assertEquals("T-04", log.latestSignIn().trainee());
      assertEquals("fill", log.latestSignIn().pass());
    }

    click("/runs");
    LocalDate day =
        Instant.ofEpochMilli(LogEntries.FIRST_WALL_MILLIS)
            .atZone(ZoneId.systemDefault())
            .toLocalDate();
    browser.open(booth.origin() + "/runs?day=" + day);
    assertEquals(12, browser.all("tbody tr").size());
    assertEquals(List.of(), browser.violations());
    browser.size(1024, 768);
    browser.picture("runs-tablet");
    browser.find("tbody a").click();
    assertTrue(browser.text("h1").matches("Run \\d+"), browser.text("h1"));
    assertEquals(List.of(), browser.violations());

    click("/state");
    assertTrue(browser.text("main").contains("simulated booth"), browser.text("main"));
    assertEquals(List.of(), browser.violations());
  }

  private void click(String address) {
    browser.find("nav a[href='" + address + "']").click();
    browser.await("the page " + address, () -> browser.find("h1").isDisplayed());
  }

  @Test
  void shouldShowAllBoothsOfTheClass() throws IOException {
    browser.size(1920, 1080);
    browser.open(booth.origin() + "/class");
    browser.await(
        "both booths",
        () ->
            browser.all(".tiles li").stream()
                .noneMatch(tile -> tile.getDomAttribute("data-signal").equals("none")));
    assertEquals(
        List.of("B-07", "B-08"),
        browser.all(".tile-booth").stream().map(e -> e.getText()).toList());
    assertEquals(List.of(), browser.violations());
    browser.picture("class-projector");
    browser.size(1024, 768);
  }

  @Test
  void shouldFitPhoneTabletProjectorAndPaper() throws IOException {
    for (String address : List.of("/", "/runs?day=2026-03-02", "/sign-in", "/class")) {
      browser.open(booth.origin() + address);
      for (int width : new int[] {320, 390, 1024, 1920}) {
        browser.size(width, width < 500 ? 844 : width * 9 / 16 + 190);
        Object wide = browser.run("return document.documentElement.scrollWidth - innerWidth;");
        assertTrue(((Number) wide).intValue() <= 0, address + " is too wide by " + wide);
        if (width == 390 || width > 320 && !address.startsWith("/runs")) {
          browser.picture("size" + name(address) + "-" + width);
        }
      }
    }
    browser.cdp("Emulation.setEmulatedMedia", Map.of("media", "print"));
    browser.size(794, 1123);
    for (String address : List.of("/", "/runs?day=2026-03-02")) {
      browser.open(booth.origin() + address);
      browser.picture("print" + name(address));
    }
    browser.cdp("Emulation.setEmulatedMedia", Map.of("media", ""));
    browser.open(booth.origin() + "/");
    browser.size(390, 844);
    assertEquals(List.of(), browser.violations());
    browser.size(1024, 768);
  }

  private static String name(String address) {
    return address.equals("/") ? "-live" : address.replaceAll("\\?.*", "").replace('/', '-');
  }

  /** All states of the lamp beside each other; the words stand below and are not in the picture. */
  private static final String ALL_STATES =
      """
      const lamp = document.querySelector('svg.lamp');
      const cover = document.createElement('div');
      for (const [name, value] of [['position', 'fixed'], ['inset', '0'], ['background', '#fff']]) {
        cover.style[name] = value;
      }
      document.body.append(cover);
      for (const signal of arguments[0]) {
        const cell = document.createElement('div');
        cell.dataset.signal = signal;
        cell.className = 'state';
        const copy = lamp.cloneNode(true);
        copy.style.position = 'fixed';
        copy.style.width = '100px';
        copy.style.height = '240px';
        copy.style.top = '0';
        copy.style.left = arguments[0].indexOf(signal) * 100 + 'px';
        cell.append(copy);
        cover.append(cell);
      }
      """;

  @Test
  void shouldTellEveryStateApartForEyesThatCannotTellRedFromGreen() throws IOException {
    browser.open(booth.origin() + "/");
    browser.size(1024, 768);
    browser.await("the words of all states", () -> browser.find("#word").isDisplayed());
    List<String> states =
        new ArrayList<>(Arrays.stream(Signal.values()).map(Signal::word).toList());
    states.add("none");
    browser.run(ALL_STATES, states);
    for (String eyes : List.of("none", "protanopia", "deuteranopia", "achromatopsia")) {
      browser.cdp("Emulation.setEmulatedVisionDeficiency", Map.of("type", eyes));
      BufferedImage picture =
          ImageIO.read(new ByteArrayInputStream(browser.picture("states-" + eyes)));
      for (int a = 0; a < states.size(); a++) {
        for (int b = 0; b < a; b++) {
          double share = differentShare(picture, a, b);
          assertTrue(
              share > 0.01, states.get(a) + " and " + states.get(b) + " look alike: " + share);
        }
      }
    }
    browser.cdp("Emulation.setEmulatedVisionDeficiency", Map.of("type", "none"));
  }

  /** Share of the lamp's pixels that differ by a quarter of the whole range of brightness. */
  private static double differentShare(BufferedImage picture, int one, int other) {
    int different = 0;
    for (int x = 0; x < 100; x++) {
      for (int y = 0; y < 240; y++) {
        double a = brightness(picture.getRGB(one * 100 + x, y));
        double b = brightness(picture.getRGB(other * 100 + x, y));
        different += Math.abs(a - b) > 64 ? 1 : 0;
      }
    }
    return different / 24_000.0;
  }

  private static double brightness(int rgb) {
    return 0.2126 * (rgb >> 16 & 255) + 0.7152 * (rgb >> 8 & 255) + 0.0722 * (rgb & 255);
  }
}
