package org.boothlamp;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Debian's Chromium without a screen, and what a person would look at in it. */
final class Browser implements AutoCloseable {

  private static final Path BINARY = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Path PICTURES = Path.of("target/screenshots");
  private static final List<String> RULES =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

  private final ChromeDriver driver;

  Browser() throws IOException {
    Files.createDirectories(PICTURES);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    ChromeOptions options = new ChromeOptions().setBinary(BINARY.toFile());
    options.addArguments(
        "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-background-networking");
    options.setCapability("goog:loggingPrefs", logs);
    System.setProperty("webdriver.chrome.driver", DRIVER.toString());
    System.setProperty("webdriver.chrome.silentOutput", "true");
    driver = new ChromeDriver(options);
    size(1024, 768);
  }

  static boolean isThere() {
    return Files.isExecutable(BINARY) && Files.isExecutable(DRIVER);
  }

  void open(String address) {
    driver.get(address);
  }

  /** Size of the page itself, in CSS pixels. */
  void size(int width, int height) {
    driver.manage().window().setSize(new Dimension(width, height));
    cdp(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  Map<String, Object> cdp(String command, Map<String, Object> parameters) {
    return driver.executeCdpCommand(command, parameters);
  }

  Object run(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  WebElement find(String selector) {
    return driver.findElement(By.cssSelector(selector));
  }

  List<WebElement> all(String selector) {
    return driver.findElements(By.cssSelector(selector));
  }

  String text(String selector) {
    return find(selector).getText();
  }

  void await(String what, BooleanSupplier condition) {
    new WebDriverWait(driver, Duration.ofSeconds(40), Duration.ofMillis(50))
        .withMessage(what)
        .until(any -> condition.getAsBoolean());
  }

  byte[] picture(String name) throws IOException {
    Object data = cdp("Page.captureScreenshot", Map.of("format", "png")).get("data");
    byte[] png = Base64.getDecoder().decode((String) data);
    Files.write(PICTURES.resolve(name + ".png"), png);
    return png;
  }

  /** What axe-core finds; nothing at best. */
  List<String> violations() {
    Results results = new AxeBuilder().withTags(RULES).analyze(driver);
    return results.getViolations().stream()
        .map(rule -> driver.getCurrentUrl() + " " + rule.getId() + ": " + rule.getNodes())
        .toList();
  }

  /** Warnings and errors of the console so far. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  /** Every address that was asked for so far. */
  List<String> requests() throws IOException {
    ObjectMapper json = new ObjectMapper();
    List<String> addresses = new ArrayList<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
      JsonNode message = json.readTree(entry.getMessage()).get("message");
      if (message.get("method").asText().equals("Network.requestWillBeSent")) {
        addresses.add(message.get("params").get("request").get("url").asText());
      }
    }
    return addresses;
  }

  @Override
  public void close() {
    driver.quit();
  }
}
