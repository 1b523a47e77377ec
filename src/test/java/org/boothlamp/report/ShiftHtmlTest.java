package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.LongFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.boothlamp.judging.Side;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.testing.Contrast;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.helpers.DefaultHandler;

class ShiftHtmlTest {

  private static final LongFunction<RunStrip> NO_CHARTS = id -> null;

  private static String evening(Language language, LongFunction<RunStrip> strips) {
    return ShiftHtml.render(
        EveningShift.report(), EveningShift.glance(), strips, Phrases.in(language), Units.METRIC);
  }

  private static String page(List<RunRecord> runs) {
    ShiftRecords records = new ShiftRecords(runs, List.of(), List.of());
    ShiftReport report = ShiftReport.of(records, EveningShift.SPAN, "B-07", "");
    ShiftTime time =
        ShiftTime.of(records, EveningShift.SPAN, List.of(), EveningShift.SPAN.untilWallMillis());
    Glance glance = Glance.of(report, new Glance.Beside(time, List.of(), List.of()));
    return ShiftHtml.render(report, glance, NO_CHARTS, Phrases.in(Language.ENGLISH), Units.METRIC);
  }

  private static Document parsed(String page) throws Exception {
    DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    builder.setErrorHandler(new DefaultHandler());
    return builder.parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> elements(Document page, String tag, String style) {
    NodeList nodes = page.getElementsByTagName(tag);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      Element element = (Element) nodes.item(i);
      if (style.isEmpty() || element.getAttribute("class").equals(style)) {
        elements.add(element);
      }
    }
    return elements;
  }

  @Test
  void shouldWriteTheEveningAsItWasLookedAt() {
    assertEquals(
        ReportResources.read("evening.html"), evening(Language.ENGLISH, EveningStrips::of));
  }

  @Test
  void shouldWriteTheEveningInSpanishAsItWasLookedAt() {
    assertEquals(ReportResources.read("evening-es.html"), evening(Language.SPANISH, NO_CHARTS));
  }

  @ParameterizedTest
  @EnumSource
  void shouldBeWellFormedAndNeedNothingFromOutside(Language language) throws Exception {
    String page = evening(language, EveningStrips::of);
    Set<String> tags =
        elements(parsed(page), "*", "").stream()
            .map(Element::getTagName)
            .collect(Collectors.toCollection(TreeSet::new));
    assertFalse(tags.stream().anyMatch(Set.of("script", "link", "img", "iframe")::contains));
    assertFalse(page.toLowerCase(Locale.ROOT).contains("http:"));
    assertFalse(page.contains("url("));
    assertTrue(page.contains("default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;"));
    assertTrue(page.contains("<html lang=\"" + language.code() + "\">"));
  }

  @Test
  void shouldLeadFromTheGlanceToEachTraineesRuns() throws Exception {
    Document page = parsed(evening(Language.ENGLISH, NO_CHARTS));
    Set<String> places =
        elements(page, "details", "").stream()
            .map(place -> "#" + place.getAttribute("id"))
            .collect(Collectors.toSet());
    List<Element> links =
        elements(page, "a", "").stream()
            .filter(link -> !link.getAttribute("href").equals("#notes"))
            .toList();
    assertEquals(4, links.size());
    links.forEach(link -> assertTrue(places.contains(link.getAttribute("href"))));
  }

  @Test
  void shouldMarkExcursionsArcOutsAndLevelsOfARun() throws Exception {
    Document page = parsed(evening(Language.ENGLISH, EveningStrips::of));
    Element first = elements(page, "svg", "strip").get(0);
    assertEquals(
        "Run at 17:31:05, 20.0 s: amps, volts and the lamp over time",
        first.getFirstChild().getTextContent().replace(Numbers.GLUE, ' '));
    assertEquals(2, count(first, "polygon", "outside-mark"));
    assertEquals(2, count(first, "circle", "hollow"));
    assertEquals(2, count(first, "rect", "band"), "a window of amps and one of volts");
    assertEquals(2, count(first, "rect", "lv-red"));
    assertTrue(count(first, "rect", "lv-green") > 0);
    Element second = elements(page, "svg", "strip").get(1);
    assertEquals(4, count(second, "polyline", "trace"), "lines are cut where nothing was measured");
  }

  private static long count(Element drawing, String tag, String style) {
    NodeList nodes = drawing.getElementsByTagName(tag);
    long count = 0;
    for (int i = 0; i < nodes.getLength(); i++) {
      count += ((Element) nodes.item(i)).getAttribute("class").equals(style) ? 1 : 0;
    }
    return count;
  }

  @Test
  void shouldTellLevelsApartWithoutColour() {
    assertTrue(LevelColour.GREEN.tenths() < LevelColour.AMBER.tenths());
    assertTrue(LevelColour.AMBER.tenths() < LevelColour.RED.tenths());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"><script>alert('x')</script><img src=x onerror=y>&amp;]]>--><!--",
        "T-04\u202e40-T",
        "\u0000\u0007\ud800",
        "</style><style>*{display:none}",
        "{0} {1} '{'"
      })
  void shouldShowAHostileCodeAsTextOnly(String code) throws Exception {
    String page =
        page(
            List.of(
                run()
                    .trainee(code)
                    .pass(code, code, code)
                    .excursion(Quantity.VOLTS, Side.HIGH, 1, 3, 28)
                    .levels(1, 0, 12, 1)
                    .build()));
    Document document = parsed(page);
    assertEquals(0, elements(document, "script", "").size());
    assertEquals(0, elements(document, "img", "").size());
    assertEquals(1, elements(document, "style", "").size());
    assertFalse(page.contains("\u202e"));
    String heading = elements(document, "summary", "").get(0).getTextContent();
    assertTrue(heading.startsWith(VisibleText.of(code)), heading);
  }

  @Test
  void shouldCutAVeryLongCodeShortAmongOthersOnly() throws Exception {
    String code = "T".repeat(10_000);
    Document document = parsed(page(List.of(run().trainee(code).build())));
    Element name = elements(document, "td", "name word").get(0);
    assertEquals("T".repeat(19) + "…", name.getTextContent().strip());
    assertTrue(elements(document, "summary", "").get(0).getTextContent().startsWith(code));
  }

  @Test
  void shouldSayThatNothingHappened() throws Exception {
    Document document = parsed(page(List.of()));
    assertEquals(0, elements(document, "table", "").size());
    assertTrue(document.getDocumentElement().getTextContent().contains("No run was welded"));
  }

  @Test
  void shouldShowRunsWhoseTimeIsNotKnownWithoutATimeOfDay() throws Exception {
    RunRecord timed = run().id(1).at(EveningShift.at(18, 0, 0)).build();
    RunRecord untimed = run().id(2).startSeconds(75).build();
    List<EventRecord> events = List.of(new EventRecord("noise", true, 0, 3, 1, 0, ""));
    ShiftRecords start = new ShiftRecords(List.of(untimed), List.of(), events);
    ShiftRecords records =
        new ShiftRecords(List.of(timed), List.of(), List.of(), List.of(new UntimedStart(7, start)));
    ShiftReport report = ShiftReport.of(records, EveningShift.SPAN, "B-07", "");
    ShiftTime time =
        ShiftTime.of(records, EveningShift.SPAN, List.of(), EveningShift.SPAN.untilWallMillis());
    Glance glance = Glance.of(report, new Glance.Beside(time, List.of(), List.of()));
    assertEquals(10, glance.rows().get(0).operator().arcSeconds(), "the timed run alone");
    String page =
        parsed(
                ShiftHtml.render(
                    report, glance, NO_CHARTS, Phrases.in(Language.ENGLISH), Units.METRIC))
            .getDocumentElement()
            .getTextContent()
            .replace(Numbers.GLUE, ' ');
    assertTrue(page.contains("1:15 min after a start of the monitor, time of day not known"), page);
    assertTrue(page.contains("In 1 of 2 runs, the time of day is not known"), page);
    assertTrue(page.contains("noise, 1.0 s, in start 7 of the monitor"), page);
    assertFalse(page.contains("1970"));
    String table = ShiftCsv.render(report, glance, Phrases.in(Language.ENGLISH));
    assertTrue(table.contains("run,B-07,T-04,,S-3F-18"), table);
  }

  @Test
  void shouldListWithoutChartsWhatIsTooMuchToDraw() throws Exception {
    List<RunRecord> runs = new ArrayList<>();
    for (int i = 0; i <= ShiftHtml.MOST_CHARTS; i++) {
      runs.add(run().id(i).build());
    }
    Document document = parsed(page(runs));
    assertEquals(runs.size(), elements(document, "div", "run").size());
    assertTrue(
        document.getDocumentElement().getTextContent().contains("they are listed without charts"));
  }

  @ParameterizedTest
  @EnumSource
  void shouldHaveAPhraseForEveryEventAndFlag(Language language) {
    Phrases phrases = Phrases.in(language);
    for (EventKind kind : EventKind.values()) {
      assertTrue(phrases.has(EventWords.key(kind.word())), kind.word());
    }
    ShiftWords words = new ShiftWords(phrases, Units.METRIC);
    for (RunFlag flag : RunFlag.values()) {
      assertFalse(words.flag(flag).isEmpty());
    }
    for (Quantity quantity : Quantity.values()) {
      for (Side side : Side.values()) {
        assertEquals(quantity.isLive(), phrases.has(sideKey(quantity, side)));
      }
    }
  }

  private static String sideKey(Quantity quantity, Side side) {
    return "shift.side." + quantity.key() + "." + side.word();
  }

  @Test
  void shouldUseNoColourThatIsNotLookedAtHere() {
    Set<String> known =
        Stream.concat(
                Stream.of(PageColour.values()).map(PageColour::hex),
                Stream.of(LevelColour.values()).map(LevelColour::hex))
            .collect(Collectors.toSet());
    Set<String> used =
        Pattern.compile("#[0-9a-fA-F]{6}\\b")
            .matcher(ShiftStyle.sheet())
            .results()
            .map(match -> match.group())
            .collect(Collectors.toSet());
    used.removeAll(known);
    assertEquals(Set.of(), used);
    assertFalse(ShiftStyle.sheet().contains("$"));
    assertFalse(ShiftStyle.sheet().contains("rgb"));
  }

  @ParameterizedTest
  @EnumSource
  void shouldHaveTheContrastThatWcagAsksForInEveryDrawing(LevelColour colour) {
    if (colour.ground() != null) {
      double contrast = Contrast.of(colour.hex(), colour.ground());
      assertTrue(contrast >= PageColour.GRAPHIC, colour + ": " + contrast);
    }
  }

  /** What stands on another ground here than on the other pages. */
  static Stream<List<Object>> otherGrounds() {
    return Stream.of(
        List.of(PageColour.BAD.hex(), PageColour.PAPER.hex(), PageColour.TEXT),
        List.of(PageColour.BAND_EDGE.hex(), PageColour.PAPER.hex(), PageColour.GRAPHIC),
        List.of(PageColour.BAND_EDGE.hex(), LevelColour.OUTSIDE.hex(), PageColour.GRAPHIC),
        List.of(PageColour.MARK.hex(), PageColour.PAPER.hex(), PageColour.GRAPHIC),
        List.of(LevelColour.TRACE.hex(), PageColour.BAND.hex(), PageColour.GRAPHIC),
        List.of(LevelColour.TRACE.hex(), PageColour.PAPER.hex(), PageColour.GRAPHIC),
        List.of(LevelColour.TRACE.hex(), PageColour.RULE.hex(), PageColour.GRAPHIC));
  }

  @ParameterizedTest
  @MethodSource("otherGrounds")
  void shouldHaveThatContrastOnEveryGround(List<Object> pair) {
    double contrast = Contrast.of((String) pair.get(0), (String) pair.get(1));
    assertTrue(contrast >= (double) pair.get(2), pair + ": " + contrast);
  }
}
