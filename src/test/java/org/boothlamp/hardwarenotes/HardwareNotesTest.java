package org.boothlamp.hardwarenotes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.boothlamp.signal.ChannelReach;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.Polarity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** The text and the drawings in hardware-notes must say what their parts give. */
class HardwareNotesTest {

  private static final Notes NOTES = Notes.read("sensors.md", "lamp-driver.md");
  private static final Map<String, Double> COMPUTED = computed();

  /** A part with its value in a drawing: {@code R1 30.1 kΩ}. */
  private static final Pattern DRAWN =
      Pattern.compile("([RC][0-9]+) ([0-9.]+ (?:k|M)?Ω|[0-9.]+ [nµ]F)");

  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)\\)");

  private static Map<String, Double> computed() {
    Map<String, Double> all = new LinkedHashMap<>(SensorArithmetic.results(NOTES));
    all.putAll(FilterArithmetic.results(NOTES));
    all.putAll(LampArithmetic.results(NOTES));
    return all;
  }

  @Test
  void shouldComputeEveryResultThatIsPrintedAndPrintEveryOneThatIsComputed() {
    assertEquals(COMPUTED.keySet(), NOTES.results().keySet());
  }

  static Stream<String> results() {
    return NOTES.results().keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("results")
  void shouldPrintWhatThePartsGive(String name) {
    Printed printed = NOTES.results().get(name);
    double exact = COMPUTED.get(name);
    assertTrue(
        printed.isRounded(exact),
        () -> name + " is " + printed.rounded(exact) + " " + printed.unit() + ", not " + printed);
  }

  @ParameterizedTest
  @ValueSource(strings = {"voltage-input.svg", "clamp-input.svg", "lamp-driver.svg"})
  void shouldDrawThePartsWithTheValuesOfTheTables(String drawing) throws Exception {
    List<String> drawn = new ArrayList<>();
    for (String text : texts(drawing)) {
      Matcher matcher = DRAWN.matcher(text);
      if (matcher.matches()) {
        drawn.add(matcher.group(1));
        assertEquals(
            NOTES.printedPart(matcher.group(1)),
            Printed.of(matcher.group(2)),
            () -> text + " in " + drawing);
      }
    }
    assertTrue(drawn.size() >= 5, () -> "parts with values in " + drawing + ": " + drawn);
  }

  private static List<String> texts(String drawing) throws Exception {
    File file = Notes.FOLDER.resolve(drawing).toFile();
    Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file);
    NodeList nodes = document.getElementsByTagName("text");
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      texts.add(nodes.item(i).getTextContent().strip());
    }
    return texts;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 10, 11, 12, 21, 22, 23, 24, 25})
  void shouldDrawEveryResistorOfTheTables(int number) throws Exception {
    String name = "R" + number;
    List<String> all = new ArrayList<>();
    for (String drawing : List.of("voltage-input.svg", "clamp-input.svg", "lamp-driver.svg")) {
      all.addAll(texts(drawing));
    }
    assertTrue(NOTES.hasPart(name));
    assertTrue(all.stream().anyMatch(text -> text.startsWith(name + " ")), name);
  }

  /** What the notes conclude in words. */
  @Test
  void shouldHoldWhatTheTextConcludes() {
    assertTrue(COMPUTED.get("v-r5") < NOTES.part("V_LIN"));
    assertTrue(COMPUTED.get("v-full") > NOTES.part("V_OC"));
    assertTrue(COMPUTED.get("p-fault") < NOTES.part("P_R"));
    assertTrue(COMPUTED.get("v-fault") < NOTES.part("V_R"));
    assertTrue(COMPUTED.get("v-start") > NOTES.part("V_R"));
    assertTrue(COMPUTED.get("u-volts") < 0.5);
    assertTrue(COMPUTED.get("u-amps") < 2.5);
    assertTrue(COMPUTED.get("iso-peak") > COMPUTED.get("iso-needed"));
    assertTrue(COMPUTED.get("creepage") < NOTES.part("D_BAR"));
    assertTrue(COMPUTED.get("v-reset-5") < NOTES.part("V_TH"));
    assertTrue(COMPUTED.get("v-lit") > 2.5);
    assertTrue(COMPUTED.get("pump-low-worst") > NOTES.part("V_SW") * 1.05);
    assertTrue(COMPUTED.get("t-dark-most") < 1);
    assertTrue(COMPUTED.get("a-open") * NOTES.part("G2") > NOTES.part("V_REF") / 2);
  }

  @Test
  void shouldGiveSettingsThatReachAsFarAsTheNotesSay() {
    TomlParseResult toml = Toml.parse(tomlIn("sensors.md"));
    assertFalse(toml.hasErrors());
    assertReach(toml, "current.amps_per_count", "a-count", "a-full");
    assertReach(toml, "voltage.volts_per_count", "v-count", "v-full");
  }

  private static void assertReach(TomlParseResult toml, String key, String step, String full) {
    double perCount = toml.getDouble(key);
    assertEquals(NOTES.results().get(step).number().doubleValue(), perCount);
    int half = (1 << 14) / 2;
    ChannelReach reach = new ChannelReach(new ChannelScale(perCount, 0), -half, half - 1);
    assertEquals(COMPUTED.get(full), reach.largest(Polarity.AC), 0.002 * COMPUTED.get(full));
  }

  private static String tomlIn(String page) {
    List<String> lines = Notes.lines(page);
    int start = lines.indexOf("```toml") + 1;
    int end = start + lines.subList(start, lines.size()).indexOf("```");
    return String.join("\n", lines.subList(start, end));
  }

  @Test
  void shouldLinkOnlyToFilesThatAreThere() throws IOException {
    try (Stream<Path> pages = Files.list(Notes.FOLDER)) {
      for (Path page : pages.filter(p -> p.toString().endsWith(".md")).toList()) {
        Matcher links = LINK.matcher(Files.readString(page));
        List<String> missing =
            links
                .results()
                .map(link -> link.group(1))
                .filter(link -> !Files.exists(Notes.FOLDER.resolve(link)))
                .collect(Collectors.toList());
        assertEquals(List.of(), missing, page.toString());
      }
    }
  }
}
