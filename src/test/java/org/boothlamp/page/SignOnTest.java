package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Who may come in when the page is open to others. */
class SignOnTest {

  private static final String CLASS_VIEW = "https://b01.school.example:8480";

  @TempDir Path folder;

  private Site site;

  @BeforeEach
  void open() throws IOException {
    site = site(null);
  }

  private Site site(Path certificate) throws IOException {
    Map<Role, Path> tokens =
        Map.of(
            Role.TRAINEE, token("trainee"),
            Role.INSTRUCTOR, token("instructor"),
            Role.TECHNICIAN, token("technician"));
    PageOptions options = Visit.options(tokens, certificate, List.of(), List.of(CLASS_VIEW));
    return Visit.site(options, folder.resolve("booth.db"), new Visit.Desk());
  }

  private static String secret(String role) {
    return role + "-0123456789-abcdef";
  }

  private Path token(String role) throws IOException {
    Path file = folder.resolve(role);
    Files.writeString(file, secret(role) + "\n");
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  private Visit as(String role) {
    return new Visit(site).header("Cookie", "other=1; " + cookie(role).split(";")[0]);
  }

  private String cookie(String role) {
    Answer answer = new Visit(site).post("/sign-on", "token", secret(role));
    assertEquals(303, answer.status());
    return answer.headers().get("Set-Cookie");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/runs", "/runs/1", "/sign-in", "/class", "/state"})
  void shouldAskForATokenFirst(String address) {
    Answer answer = new Visit(site).get(address);
    assertEquals(303, answer.status());
    assertEquals("/sign-on", answer.headers().get("Location"));
    assertEquals(401, new Visit(site).get(LiveStream.PATH).status());
  }

  @ParameterizedTest
  @CsvSource({
    "trainee, 200, 200, 403, 403",
    "instructor, 200, 200, 200, 200",
    "technician, 200, 403, 403, 200"
  })
  void shouldLetEachRoleSeeWhatIsItsOwn(String role, int live, int signIn, int all, int state) {
    assertEquals(live, as(role).get("/").status());
    assertEquals(signIn, as(role).get("/sign-in").status());
    assertEquals(all, as(role).get("/class").status());
    assertEquals(state, as(role).get("/state").status());
    assertEquals(LiveKind.CHART, as(role).get(LiveStream.PATH).live());
  }

  @Test
  void shouldKeepTheTokenOutOfACookieThatOnlyThisPageCanRead() throws IOException {
    String cookie = cookie("trainee");
    assertFalse(cookie.contains(secret("trainee")), cookie);
    assertTrue(cookie.startsWith("booth-B-07=trainee."), cookie);
    assertTrue(cookie.contains("; HttpOnly; SameSite=Strict"), cookie);
    assertFalse(cookie.contains("Secure"), "would never come back without TLS");
  }

  @Test
  void shouldRefuseACookieThatWasMadeUpOrIsOver() {
    String mine = cookie("trainee").split(";")[0];
    String higher = mine.replace("=trainee.", "=instructor.");
    assertEquals(303, new Visit(site).header("Cookie", higher).get("/").status());
    String longer = mine.replaceAll("\\.\\d+\\.", ".9999999999.");
    assertEquals(303, new Visit(site).header("Cookie", longer).get("/").status());
    Tokens tokens = new Tokens("B-07", Map.of(Role.TRAINEE, secret("trainee")));
    String cookie = tokens.cookie(Role.TRAINEE, 1_000);
    assertEquals(Role.TRAINEE, tokens.roleOfCookie(cookie, 1_000 + Tokens.COOKIE_SECONDS));
    assertNull(tokens.roleOfCookie(cookie, 1_001 + Tokens.COOKIE_SECONDS));
    assertNull(tokens.roleOfCookie("trainee.1.2.3", 0));
    assertNull(tokens.roleOfCookie("trainee.x.y", 0));
    assertNull(tokens.roleOfCookie(null, 0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "wrong", "trainee-0123456789-abcde", "trainee-0123456789-abcdefg"})
  void shouldRefuseAWrongToken(String token) {
    Answer answer = new Visit(site).post("/sign-on", "token", token);
    assertEquals(403, answer.status());
    assertNull(answer.headers().get("Set-Cookie"));
  }

  @Test
  void shouldLetNobodyTryAllTokens() {
    Visit visit = new Visit(site);
    int tries = 0;
    while (visit.post("/sign-on", "token", "wrong").status() == 403) {
      tries++;
    }
    assertEquals(5, tries);
    assertEquals(429, visit.post("/sign-on", "token", secret("instructor")).status());
  }

  @Test
  void shouldSignOff() {
    Visit visit = as("trainee");
    String form = Visit.form(Visit.formToken(visit.get("/")));
    visit.header("Origin", "http://" + Visit.HOST);
    Answer answer = visit.send("POST", "/sign-off", form);
    assertEquals(303, answer.status());
    assertTrue(answer.headers().get("Set-Cookie").startsWith("booth-B-07=; Path=/; Max-Age=0"));
  }

  @Test
  void shouldNotTakeTheFormTokenOfAnotherVisitor() {
    String others = Visit.formToken(as("trainee").get("/sign-in"));
    Visit visit = as("instructor").header("Origin", "http://" + Visit.HOST);
    String form = Visit.form(others, "trainee", "T-04", "weld", "S-3F-18/fill");
    assertEquals(403, visit.send("POST", "/sign-in", form).status());
  }

  @Test
  void shouldLetAListedClassViewLookWithATokenInAHeader() {
    Visit visit =
        new Visit(site).header("Origin", CLASS_VIEW).header("Sec-Fetch-Site", "cross-site");
    Answer asked = visit.send("OPTIONS", LiveStream.PATH, "");
    assertEquals(204, asked.status());
    assertEquals(CLASS_VIEW, asked.headers().get("Access-Control-Allow-Origin"));
    assertEquals("Authorization", asked.headers().get("Access-Control-Allow-Headers"));
    assertNull(asked.headers().get("Access-Control-Allow-Credentials"), "never with cookies");
    assertEquals(401, visit.get(LiveStream.PATH).status());
    visit.header("Authorization", "Bearer " + secret("trainee"));
    Answer live = visit.get(LiveStream.PATH + "?lamp");
    assertEquals(LiveKind.LAMP, live.live());
    assertEquals("Origin", live.headers().get("Vary"));
    assertEquals(303, visit.header("Sec-Fetch-Mode", "navigate").get("/runs").status());
  }

  @ParameterizedTest
  @ValueSource(strings = {"https://evil.example", "null", "http://b01.school.example:8480"})
  void shouldLetNoOtherOriginLook(String origin) {
    Visit visit = new Visit(site).header("Origin", origin).header("Sec-Fetch-Site", "cross-site");
    visit.header("Authorization", "Bearer " + secret("instructor"));
    assertEquals(403, visit.get(LiveStream.PATH).status());
    assertNull(visit.get(LiveStream.PATH).headers().get("Access-Control-Allow-Origin"));
    assertNull(
        visit.send("OPTIONS", LiveStream.PATH, "").headers().get("Access-Control-Allow-Origin"));
  }

  @Test
  void shouldNotTakeACookieFromAnotherOrigin() {
    Visit visit = as("instructor").header("Origin", CLASS_VIEW);
    assertEquals(401, visit.get(LiveStream.PATH).status());
  }

  @Test
  void shouldRefuseATokenFileThatOthersMayRead() throws IOException {
    Path file = token("trainee");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    String message =
        assertThrows(PageStartException.class, () -> TokenFile.read(file)).getMessage();
    assertTrue(message.contains("may be read or written by others; chmod 600"), message);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "short", "with blanks in it and long enough", "ümlauts-are-no-good-here"})
  void shouldRefuseATokenThatIsEasyToGuessOrToMistype(String token) throws IOException {
    Path file = Files.writeString(token("trainee"), token);
    String message =
        assertThrows(PageStartException.class, () -> TokenFile.read(file)).getMessage();
    assertTrue(message.contains("openssl rand"), message);
  }

  @Test
  void shouldSayHowToMakeATokenFileThatIsMissing() {
    Path file = folder.resolve("nowhere");
    String message =
        assertThrows(PageStartException.class, () -> TokenFile.read(file)).getMessage();
    assertTrue(message.contains("cannot be read") && message.contains("chmod 600"), message);
  }

  @Test
  void shouldNeverBeOpenToOthersWithoutAToken() {
    InetSocketAddress everywhere = new InetSocketAddress("0.0.0.0", 8_480);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new PageOptions(
                "B-07",
                Language.ENGLISH,
                Units.METRIC,
                everywhere,
                Map.of(),
                null,
                null,
                List.of(),
                List.of(),
                40));
  }
}
