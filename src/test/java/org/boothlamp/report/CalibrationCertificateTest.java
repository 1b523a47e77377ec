package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.testing.Contrast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.helpers.DefaultHandler;

class CalibrationCertificateTest {

  /** Everything a hostile hand might type into a free text. */
  private static final String HOSTILE =
      "\"><script>alert('x')</script><img src=x onerror=y>&amp;]]>--><!--\u0000\u202e\u0007\ud800";

  private static String page(CalibrationSheet sheet) {
    return CalibrationCertificate.render(sheet);
  }

  private static Document parsed(String page) throws Exception {
    DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    builder.setErrorHandler(new DefaultHandler());
    return builder.parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> elements(Document page, String tag) {
    NodeList nodes = page.getElementsByTagName(tag);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  private static Set<String> tags(Document page) {
    return elements(page, "*").stream()
        .map(Element::getTagName)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static long count(Document page, String tag, String style) {
    return elements(page, tag).stream()
        .filter(element -> element.getAttribute("class").equals(style))
        .count();
  }

  @ParameterizedTest
  @ValueSource(strings = {"accepted", "refused", "withdrawn"})
  void shouldWriteThePageAsItWasLookedAt(String name) {
    assertEquals(
        CalibrationPageResources.read(name + ".html"), page(CalibrationPageResources.sheet(name)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"accepted", "refused", "withdrawn"})
  void shouldBeWellFormedAndNeedNothingFromOutside(String name) throws Exception {
    String page = page(CalibrationPageResources.sheet(name));
    Document document = parsed(page);
    assertFalse(tags(document).stream().anyMatch(Set.of("script", "link", "img", "a")::contains));
    String lower = page.toLowerCase(Locale.ROOT);
    for (String outside : List.of("http:", "https:", "//", "url(", "@import", "href", "src=")) {
      assertFalse(lower.contains(outside), outside);
    }
    for (Element element : elements(document, "*")) {
      assertFalse(element.hasAttribute("style"), "styles stand in the sheet only");
    }
  }

  @Test
  void shouldShowEveryPointAndEveryInfluence() throws Exception {
    Document page = parsed(page(CalibrationPageResources.sheet("accepted")));
    List<Element> tables = elements(page, "table");
    assertEquals(2, tables.size());
    assertEquals(1 + 13, tables.get(0).getElementsByTagName("tr").getLength());
    assertEquals(2 + 7 + 2, tables.get(1).getElementsByTagName("tr").getLength());
  }

  @Test
  void shouldTellPointsApartByShape() throws Exception {
    CalibrationSheet sheet = CalibrationSamples.bare(CalibrationSamples.accepted());
    Document page = parsed(page(sheet));
    Element residuals = elements(page, "svg").get(0);
    assertEquals(6, shapes(residuals, "polygon", "full"), "rising");
    assertEquals(6, shapes(residuals, "polygon", "hollow"), "falling");
    assertEquals(0, shapes(residuals, "path", "cross"), "thrown away, far outside the drawing");
    Element errors = elements(page, "svg").get(1);
    assertEquals(12, shapes(errors, "circle", "hollow"), "as found");
    assertEquals(12, shapes(errors, "polygon", "full"), "as left");
    assertEquals(2, shapes(errors, "polyline", "limit"), "class limit");
    assertEquals(2, shapes(errors, "polyline", "inner"), "less the guard band");
  }

  private static long shapes(Element drawing, String tag, String style) {
    NodeList nodes = drawing.getElementsByTagName(tag);
    long count = 0;
    for (int i = 0; i < nodes.getLength(); i++) {
      count += ((Element) nodes.item(i)).getAttribute("class").equals(style) ? 1 : 0;
    }
    return count;
  }

  @Test
  void shouldDrawTheClassLimitWhereItFitsAndSayWhereItDoesNot() throws Exception {
    String fine = page(CalibrationPageResources.sheet("accepted"));
    assertTrue(fine.contains("class limit ± 10 A lies outside"), fine);
    Document coarse = parsed(page(CalibrationPageResources.sheet("refused")));
    assertEquals(2, shapes(elements(coarse, "svg").get(0), "polyline", "limit"));
  }

  @Test
  void shouldDrawTheChecksWithTheirLimitsAndTheRun() throws Exception {
    Document page = parsed(page(CalibrationPageResources.sheet("accepted")));
    Element chart = elements(page, "svg").get(2);
    assertEquals(4, shapes(chart, "polyline", "limit"), "two calibrations, both ways");
    assertEquals(2, shapes(chart, "polyline", "control"));
    assertEquals(11, shapes(chart, "circle", "hollow"), "passed");
    assertEquals(3, shapes(chart, "path", "cross"), "failed");
    assertEquals(1, shapes(chart, "line", "change"));
  }

  @Test
  void shouldEscapeWhatPeopleTyped() throws Exception {
    CalibrationRecord record =
        CalibrationSamples.ended(
            4,
            CalibrationSamples.head(HOSTILE, CalibrationSamples.meter(HOSTILE)),
            List.of(CalibrationSamples.soundPoints().get(0).discarded(HOSTILE)),
            null);
    Withdrawal withdrawal = new Withdrawal(0, 0, HOSTILE, HOSTILE);
    String text =
        page(
            CalibrationSamples.sheet(
                new CalibrationRecord(
                    4, record.head(), record.points(), record.finish(), withdrawal)));
    Document page = parsed(text);
    Set<String> known = tags(parsed(page(CalibrationPageResources.sheet("withdrawn"))));
    known.addAll(tags(parsed(page(CalibrationPageResources.sheet("refused")))));
    Set<String> found = tags(page);
    found.removeAll(known);
    assertEquals(Set.of(), found, "elements that nobody but the hostile hand made");
    assertFalse(text.contains("\u0000") || text.contains("\u202e") || text.contains("<img"), text);
    assertTrue(text.contains("[U+0000][U+202E][U+0007][U+D800]"), text);
    long shown =
        elements(page, "dd").stream()
            .filter(element -> element.getTextContent().startsWith("\"><script>alert('x')"))
            .count();
    assertEquals(2, shown, "technician and meter, as they were typed");
  }

  @Test
  void shouldSayThatRecordAndRecomputationDisagree() throws Exception {
    Document page = parsed(page(CalibrationSamples.bare(CalibrationSamples.tampered())));
    assertEquals(1, count(page, "div", "box doubt"));
    String words = elements(page, "ul").get(0).getTextContent();
    assertTrue(words.contains("scale, A a count: the record says 0.209"), words);
    Document sound = parsed(page(CalibrationSamples.bare(CalibrationSamples.accepted())));
    assertEquals(0, count(sound, "div", "box doubt"));
  }

  @Test
  void shouldDrawTheLimitsOfASingleCheck() throws Exception {
    CalibrationSheet sheet =
        new CalibrationSheet(
            CalibrationSamples.accepted(),
            CalibrationSamples.checks().subList(0, 1),
            CalibrationSamples.ZONE,
            CalibrationSamples.LATER);
    Element chart = elements(parsed(page(sheet)), "svg").get(2);
    NodeList lines = chart.getElementsByTagName("polyline");
    assertEquals(2, lines.getLength());
    assertEquals(2, ((Element) lines.item(0)).getAttribute("points").split(" ").length);
  }

  @Test
  void shouldLeaveRoomToSignAndSayWhatItIsNot() throws Exception {
    String page = page(CalibrationPageResources.sheet("accepted"));
    assertEquals(1, count(parsed(page), "div", "sign"));
    assertTrue(page.contains("no safety device and no acceptance of a weld"));
    assertTrue(page.contains("not a certificate of an accredited laboratory"));
  }

  @Test
  void shouldStandWithoutAnyPoint() throws Exception {
    CalibrationRecord open =
        new CalibrationRecord(3, CalibrationSamples.accepted().head(), List.of(), null, null);
    Document page = parsed(page(CalibrationSamples.bare(open)));
    assertEquals(List.of(), elements(page, "svg"));
    assertEquals(List.of(), elements(page, "table"));
  }

  @Test
  void shouldUseNoColourThatIsNotLookedAtHere() {
    Set<String> known =
        Arrays.stream(PageColour.values()).map(PageColour::hex).collect(Collectors.toSet());
    Set<String> used =
        Pattern.compile("#[0-9a-fA-F]{6}\\b")
            .matcher(page(CalibrationPageResources.sheet("accepted")))
            .results()
            .map(match -> match.group())
            .collect(Collectors.toSet());
    assertEquals(known, used);
    assertFalse(PageStyle.sheet().contains("$"));
    assertFalse(PageStyle.sheet().contains("rgb"));
  }

  @ParameterizedTest
  @EnumSource
  void shouldHaveTheContrastThatWcagAsksFor(PageColour colour) {
    if (colour.ground() == null) {
      assertEquals(0, colour.leastContrast(), "a ground");
      return;
    }
    double contrast = Contrast.of(colour.hex(), colour.ground().hex());
    assertTrue(contrast >= colour.leastContrast(), colour + ": " + contrast);
  }

  /** WCAG 2.1 says 21 for black on white, and 1 for a colour on itself. */
  @Test
  void shouldKnowHowContrastIsComputed() {
    assertEquals(21, Contrast.of("#000000", "#ffffff"), 1e-9);
    assertEquals(1, Contrast.of("#7a1212", "#7a1212"), 1e-9);
    assertEquals(4.48, Contrast.of("#777777", "#ffffff"), 0.005);
  }
}
