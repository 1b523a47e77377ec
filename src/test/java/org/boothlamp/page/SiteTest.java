package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a page on the booth's own screen answers. */
class SiteTest {

  @TempDir Path folder;

  private final Visit.Desk desk = new Visit.Desk();

  private Visit visit() {
    return new Visit(Visit.site(Visit.open(), folder.resolve("booth.db"), desk));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/runs", "/runs?day=2026-03-29", "/sign-in", "/class", "/state"})
  void shouldShowEveryPageOfTheMenuInsideTheSamePolicy(String address) {
    Answer answer = visit().get(address);
    assertEquals(200, answer.status());
    Map<String, String> headers = answer.headers();
    assertEquals(
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src"
            + " 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'",
        headers.get("Content-Security-Policy"));
    assertEquals("nosniff", headers.get("X-Content-Type-Options"));
    assertEquals("no-store", headers.get("Cache-Control"));
    assertFalse(answer.text().contains(" style="), "no style inside the page");
    assertFalse(answer.text().contains("<script>"), "no script inside the page");
    assertTrue(answer.text().contains("aria-current=\"page\"") || address.contains("?"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../booth.toml",
        "/static/../../booth.toml",
        "/static/%2e%2e/%2e%2e/etc/passwd",
        "/static//etc/passwd",
        "/static/",
        "/runs/../state",
        "/runs/1%00",
        "/runs/-1",
        "/runs/99999999999999999999",
        "/nothing",
        "//"
      })
  void shouldKnowNoOtherAddress(String address) {
    assertEquals(404, visit().get(address).status());
  }

  @Test
  void shouldHandOutItsOwnScriptsWithTheirLicence() {
    Answer script = visit().get("/static/uPlot.min.js?v=1");
    assertEquals("text/javascript; charset=utf-8", script.headers().get("Content-Type"));
    assertTrue(script.text().contains("uPlot"));
    assertTrue(visit().get("/static/uPlot-LICENSE.txt").text().contains("Permission is hereby"));
  }

  @Test
  void shouldSignIn() {
    Answer answer = visit().post("/sign-in", "trainee", " T-04 ", "weld", "S-3F-18/fill");
    assertEquals(303, answer.status());
    assertEquals("/", answer.headers().get("Location"));
    assertEquals(List.of("T-04 S-3F-18 fill"), desk.done);
  }

  @Test
  void shouldSignOut() {
    assertEquals(303, visit().post("/sign-in", "out", "out").status());
    assertEquals(List.of("out"), desk.done);
  }

  @Test
  void shouldSayWhyAProcedureCannotBeJudged() {
    desk.refusal = "window too narrow: <amps> 95 to 96";
    Answer answer = visit().post("/sign-in", "trainee", "T-04", "weld", "S-3F-18/fill");
    assertEquals(422, answer.status());
    assertTrue(answer.text().contains("window too narrow: &lt;amps&gt; 95 to 96"), answer.text());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "\"onfocus=alert(1) x=\"",
        "' OR 1=1 --",
        "T-04\u0000",
        "T\u202e40",
        "",
        "naïve",
        "T-04\r\nSet-Cookie: x=y"
      })
  void shouldRefuseATraineeCodeThatIsNoneAndEscapeIt(String typed) {
    Answer answer = visit().post("/sign-in", "trainee", typed, "weld", "S-3F-18/fill");
    assertEquals(422, answer.status());
    assertEquals(List.of(), desk.done);
    assertFalse(answer.text().contains("<script>alert"), answer.text());
    assertFalse(answer.text().contains("\u202e"), "direction marks are written out");
    assertFalse(answer.text().contains("\u0000"), "so are control characters");
    assertFalse(answer.text().contains("\"onfocus"), answer.text());
  }

  @Test
  void shouldNotRepeatTenThousandCharacters() {
    Answer answer = visit().post("/sign-in", "trainee", "A".repeat(10_000), "weld", "x");
    assertEquals(422, answer.status());
    assertTrue(answer.body().length < 20_000, "bytes: " + answer.body().length);
  }

  @Test
  void shouldRefuseAFormWithoutItsToken() {
    Visit visit = visit().header("Origin", "http://" + Visit.HOST);
    String form = "trainee=T-04&weld=S-3F-18%2Ffill";
    assertEquals(403, visit.send("POST", "/sign-in", form).status());
    assertEquals(403, visit.send("POST", "/sign-in", "form_token=0123abcd&" + form).status());
    assertEquals(List.of(), desk.done);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"http://evil.example", "null", "https://127.0.0.1:8480", "http://localhost"})
  void shouldRefuseAFormOfAnotherOrigin(String origin) {
    Visit visit = visit();
    String token = Visit.formToken(visit.get("/sign-in"));
    visit.header("Origin", origin);
    String form = Visit.form(token, "trainee", "T-04", "weld", "S-3F-18/fill");
    assertEquals(403, visit.send("POST", "/sign-in", form).status());
    assertEquals(List.of(), desk.done);
  }

  @Test
  void shouldRefuseAFormThatDoesNotSayWhereItComesFrom() {
    Visit visit = visit();
    String token = Visit.formToken(visit.get("/sign-in"));
    String form = Visit.form(token, "trainee", "T-04", "weld", "S-3F-18/fill");
    assertEquals(403, visit.send("POST", "/sign-in", form).status());
  }

  @ParameterizedTest
  @ValueSource(strings = {"evil.example:8480", "evil.example", "127.0.0.1.evil.example", ""})
  void shouldNotAnswerUnderANameThatWasMadeToPointHere(String host) {
    assertEquals(421, visit().header("Host", host).get("/").status());
    assertEquals(421, visit().header("Host", host).get(LiveStream.PATH).status());
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost:8480", "127.0.0.1", "[::1]:8480"})
  void shouldAnswerUnderThisComputersOwnNames(String host) {
    assertEquals(200, visit().header("Host", host).get("/").status());
  }

  @Test
  void shouldNotBeReadByOtherSites() {
    Visit visit = visit().header("Sec-Fetch-Site", "cross-site").header("Sec-Fetch-Mode", "cors");
    assertEquals(403, visit.get("/runs").status());
    assertEquals(403, visit.get(LiveStream.PATH).status());
    assertNull(visit.get(LiveStream.PATH).headers().get("Access-Control-Allow-Origin"));
    assertEquals(200, visit.header("Sec-Fetch-Mode", "navigate").get("/runs").status());
  }

  @Test
  void shouldRefuseMethodsItDoesNotHave() {
    assertEquals(405, visit().send("PUT", "/", "").status());
    assertEquals(405, visit().send("TRACE", "/runs", "").status());
    Visit visit = visit();
    String form = Visit.form(Visit.formToken(visit.get("/sign-in")));
    visit.header("Origin", "http://" + Visit.HOST);
    assertEquals(405, visit.send("POST", "/runs", form).status());
    assertEquals(405, visit().send("POST", LiveStream.PATH, "").status());
  }

  @ParameterizedTest
  @ValueSource(strings = {"%", "%zz", "day=%ff%"})
  void shouldSurviveAddressesThatCannotBeDecoded(String query) {
    assertEquals(200, visit().get("/runs?" + query).status());
  }

  @Test
  void shouldSayHowADayIsWritten() {
    Answer answer = visit().get("/runs?day=%3Cb%3Etoday");
    assertEquals(400, answer.status());
    assertTrue(answer.text().contains("A day is written like"), answer.text());
  }

  @Test
  void shouldRefuseAFormOfTooManyFields() {
    StringBuilder form = new StringBuilder();
    for (int k = 0; k < 1_000; k++) {
      form.append("a").append(k).append("=1&");
    }
    assertEquals(400, visit().send("POST", "/sign-in", form.toString()).status());
  }

  @Test
  void shouldOfferBothKindsOfLiveValues() {
    assertEquals(LiveKind.CHART, visit().get(LiveStream.PATH).live());
    assertEquals(LiveKind.LAMP, visit().get(LiveStream.PATH + "?lamp").live());
  }
}
