package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher on machines that lack this or that: a small checkout, with Javas and tools made up.
 */
class LauncherIT {

  private static final Path LAUNCHER = Path.of("deploy/boothlamp");

  /** What the launcher may find in PATH besides Java and Maven. */
  private static final List<String> TOOLS =
      List.of("sed", "dirname", "readlink", "find", "stty", "mkdir");

  /** Prints its arguments, one a line, and ends as it is told. */
  private static final String FAKE_JAVA =
      "#!/bin/sh\nprintf '%s\\n' \"$@\"\nexit ${FAKE_EXIT:-0}\n";

  /** Leaves a jar, and a note of how it was called. */
  private static final String FAKE_MAVEN =
      """
      #!/bin/sh
      root=$(dirname "$4")
      printf '%s\\n' "JAVA_HOME=$JAVA_HOME $*" >>"$root/builds.txt"
      mkdir -p "$root/target"
      printf 'jar' >"$root/target/boothlamp-0.1.0.jar"
      """;

  private record Outcome(int exitCode, String out, String err) {}

  @TempDir Path folder;

  private final Map<String, String> environment = new HashMap<>();
  private Path checkout;
  private Path path;
  private Path javas;

  @BeforeEach
  void makeMachine() throws IOException {
    folder = folder.toRealPath();
    checkout = Files.createDirectories(folder.resolve("check out"));
    path = Files.createDirectories(folder.resolve("bin"));
    javas = Files.createDirectories(folder.resolve("jvm"));
    script(Files.createDirectories(checkout.resolve("deploy")).resolve("boothlamp"), launcher());
    old(Files.writeString(checkout.resolve("pom.xml"), "<project/>"));
    Path sources = Files.createDirectories(checkout.resolve("src/main"));
    old(Files.writeString(sources.resolve("Source.java"), ""));
    old(sources);
    for (String tool : TOOLS) {
      script(path.resolve(tool), "#!/bin/sh\nexec " + toolOfThisMachine(tool) + " \"$@\"\n");
    }
    environment.put("PATH", path.toString());
    environment.put("BOOTHLAMP_JVMS", javas.toString());
  }

  private static String launcher() throws IOException {
    return Files.readString(LAUNCHER);
  }

  private static Path toolOfThisMachine(String tool) {
    Path usr = Path.of("/usr/bin", tool);
    return Files.exists(usr) ? usr : Path.of("/bin", tool);
  }

  private static void script(Path file, String text) throws IOException {
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  /** As if it had been there for an hour. */
  private static void old(Path file) throws IOException {
    Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(1, ChronoUnit.HOURS)));
  }

  /** A runtime without a compiler; answers its home. */
  private Path runtime(String name, String version) throws IOException {
    Path home = Files.createDirectories(javas.resolve(name));
    Files.writeString(home.resolve("release"), "JAVA_VERSION=\"" + version + "\"\n");
    script(Files.createDirectories(home.resolve("bin")).resolve("java"), FAKE_JAVA);
    return home;
  }

  /** The same with a compiler. */
  private Path developmentKit(String name, String version) throws IOException {
    Path home = runtime(name, version);
    script(home.resolve("bin/javac"), "#!/bin/sh\n");
    return home;
  }

  private void maven(String text) throws IOException {
    script(path.resolve("mvn"), text);
  }

  private Path jar(String name) throws IOException {
    return Files.writeString(Files.createDirectories(checkout.resolve("target")).resolve(name), "");
  }

  private List<String> builds() throws IOException {
    Path notes = checkout.resolve("builds.txt");
    return Files.exists(notes) ? Files.readAllLines(notes) : List.of();
  }

  private Outcome launch(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(checkout.resolve("deploy/boothlamp").toString());
    command.addAll(List.of(arguments));
    Path out = Files.createTempFile(folder, "out", ".txt");
    Path err = Files.createTempFile(folder, "err", ".txt");
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().clear();
    builder.environment().putAll(environment);
    int exitCode =
        builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start().waitFor();
    return new Outcome(exitCode, Files.readString(out), Files.readString(err));
  }

  private void assertRefused(Outcome outcome, String what, String nextMove) {
    assertEquals(1, outcome.exitCode());
    assertEquals("", outcome.out());
    assertTrue(outcome.err().contains(what), outcome.err());
    assertTrue(outcome.err().contains(nextMove), outcome.err());
  }

  @Test
  void shouldNameThePackageWhenThereIsNoJava() throws Exception {
    jar("boothlamp-0.1.0.jar");
    assertRefused(
        launch("run"),
        "no Java of version 17 or newer was found",
        "apt-get install openjdk-17-jre-headless");
  }

  @Test
  void shouldNotTakeAJavaThatIsTooOld() throws Exception {
    jar("boothlamp-0.1.0.jar");
    environment.put("JAVA_HOME", runtime("java-11", "11.0.20").toString());
    assertRefused(
        launch("run"),
        "no Java of version 17 or newer was found",
        "apt-get install openjdk-17-jre-headless");
  }

  @Test
  void shouldPassOverAnOldJavaForANewerOne() throws Exception {
    jar("boothlamp-0.1.0.jar");
    Path old = runtime("java-11", "11.0.20");
    environment.put("JAVA_HOME", old.toString());
    Files.createSymbolicLink(path.resolve("java"), old.resolve("bin/java"));
    Path newer = runtime("java-21", "21.0.4");
    script(newer.resolve("bin/java"), "#!/bin/sh\necho the newer one\n");
    assertEquals("the newer one\n", launch("run").out());
  }

  @Test
  void shouldNotTakeAnEarlyJavaWithItsOtherNumbersForANewOne() throws Exception {
    jar("boothlamp-0.1.0.jar");
    runtime("java-8", "1.8.0_412");
    assertRefused(launch("run"), "no Java of version 17", "openjdk-17-jre-headless");
  }

  @Test
  void shouldAskAJavaForItsVersionWhenItHasNoReleaseFile() throws Exception {
    jar("boothlamp-0.1.0.jar");
    Path home = runtime("custom", "17");
    Files.delete(home.resolve("release"));
    script(
        home.resolve("bin/java"),
        "#!/bin/sh\ncase $1 in -version) echo 'openjdk version \"17.0.1\" 2021-10-19' >&2 ;; *) echo ran ;; esac\n");
    assertEquals("ran\n", launch("run").out());
  }

  @Test
  void shouldNameTheCompilersPackageWhenThereIsNothingToRunAndOnlyARuntime() throws Exception {
    maven(FAKE_MAVEN);
    runtime("java-17", "17.0.15");
    assertRefused(
        launch("demo"),
        "is a runtime without a compiler",
        "apt-get install openjdk-17-jdk-headless");
    assertEquals(List.of(), builds());
  }

  @Test
  void shouldNameMavenWhenItIsMissing() throws Exception {
    developmentKit("java-17", "17.0.15");
    assertRefused(launch("demo"), "Maven is missing", "apt-get install maven");
  }

  @Test
  void shouldBuildTheJarOnFirstUseWithTheJavaThatItFound() throws Exception {
    maven(FAKE_MAVEN);
    Path home = developmentKit("java-17", "17.0.15");
    Outcome outcome = launch("demo");
    assertEquals(0, outcome.exitCode(), outcome.err());
    assertTrue(outcome.out().contains(checkout.resolve("target/boothlamp-0.1.0.jar") + "\ndemo\n"));
    assertTrue(outcome.err().contains("building the jar"), outcome.err());
    assertEquals(1, builds().size());
    assertTrue(builds().get(0).startsWith("JAVA_HOME=" + home + " "), builds()::toString);
    assertTrue(builds().get(0).endsWith(" package"), builds()::toString);
  }

  @Test
  void shouldBuildOnlyOnceWhenNothingHasChanged() throws Exception {
    maven(FAKE_MAVEN);
    developmentKit("java-17", "17.0.15");
    launch("demo");
    Outcome again = launch("demo");
    assertEquals(1, builds().size());
    assertEquals("", again.err());
  }

  @Test
  void shouldBuildAgainWhenASourceIsNewerThanTheJar() throws Exception {
    maven(FAKE_MAVEN);
    developmentKit("java-17", "17.0.15");
    Path jar = jar("boothlamp-0.1.0.jar");
    old(jar);
    Files.writeString(checkout.resolve("src/main/Source.java"), "changed");
    assertEquals(0, launch("demo").exitCode());
    assertEquals(1, builds().size());
  }

  @Test
  void shouldRunTheJarOfTheBuildWhenThatOfAnEarlierVersionLiesBesideIt() throws Exception {
    maven(FAKE_MAVEN);
    developmentKit("java-17", "17.0.15");
    old(jar("boothlamp-0.0.9.jar"));
    jar("boothlamp-0.1.0.jar");
    String newest = checkout.resolve("target/boothlamp-0.1.0.jar").toString();
    assertTrue(launch("demo").out().contains(newest));
    assertEquals(List.of(), builds());
  }

  @Test
  void shouldSayThatTheBuildFailedAndRunNothing() throws Exception {
    maven("#!/bin/sh\necho no network\nexit 1\n");
    developmentKit("java-17", "17.0.15");
    Outcome outcome = launch("demo");
    assertRefused(outcome, "the build failed", "needs a network the first time");
    assertTrue(outcome.err().contains("no network"), outcome.err());
  }

  @Test
  void shouldPassArgumentsOnAsTheyAreAndTheExitCodeBack() throws Exception {
    jar("boothlamp-0.1.0.jar");
    runtime("java-17", "17.0.15");
    environment.put("FAKE_EXIT", "2");
    Outcome outcome = launch("replay", "five runs.wav", "", "*", "--pass", "$HOME");
    assertEquals(2, outcome.exitCode());
    assertTrue(
        outcome.out().endsWith(".jar\nreplay\nfive runs.wav\n\n*\n--pass\n$HOME\n"), outcome.out());
  }

  @Test
  void shouldUseTheNamedJarAndLookForNoOther() throws Exception {
    Path named = Files.writeString(folder.resolve("my own.jar"), "");
    old(named);
    runtime("java-17", "17.0.15");
    environment.put("BOOTHLAMP_JAR", named.toString());
    Outcome outcome = launch("check");
    assertEquals(0, outcome.exitCode(), outcome.err());
    assertTrue(outcome.out().contains("-jar\n" + named + "\ncheck\n"), outcome.out());
  }

  @Test
  void shouldRefuseANamedJarThatIsNotThere() throws Exception {
    runtime("java-17", "17.0.15");
    environment.put("BOOTHLAMP_JAR", "/nowhere/boothlamp.jar");
    assertRefused(launch("check"), "no jar: /nowhere/boothlamp.jar", "name one in BOOTHLAMP_JAR");
  }

  @Test
  void shouldAllowNativeCodeWhereJavaWantsToBeTold() throws Exception {
    jar("boothlamp-0.1.0.jar");
    environment.put("BOOTHLAMP_JAVA", runtime("java-17", "17.0.15") + "/bin/java");
    assertFalse(launch("run").out().contains("--enable-native-access"));
    environment.put("BOOTHLAMP_JAVA", runtime("java-25", "25") + "/bin/java");
    assertTrue(launch("run").out().contains("--enable-native-access=ALL-UNNAMED\n"));
  }

  @Test
  void shouldTakeOptionsFromTheEnvironmentInsteadOfItsOwn() throws Exception {
    jar("boothlamp-0.1.0.jar");
    runtime("java-17", "17.0.15");
    assertTrue(launch("run").out().contains("-Xmx64m\n"));
    environment.put("BOOTHLAMP_OPTS", "-Xmx99m -ea");
    String out = launch("run").out();
    assertTrue(out.startsWith("-Xmx99m\n-ea\n"), out);
    assertFalse(out.contains("-Xmx64m"), out);
  }

  @Test
  void shouldStartTheRealJarWithARealJava() throws Exception {
    environment.put(
        "BOOTHLAMP_JAVA", Path.of(System.getProperty("java.home"), "bin/java").toString());
    environment.put("BOOTHLAMP_JAR", System.getProperty("boothlamp.jar"));
    Outcome version = launch("--version");
    assertEquals(0, version.exitCode(), version.err());
    assertTrue(version.out().matches("boothlamp \\d+\\.\\d+\\.\\d+\\n"), version.out());
    assertEquals("", version.err());
    Outcome unknown = launch("replai");
    assertEquals(2, unknown.exitCode());
    assertEquals("", unknown.out());
    assertTrue(unknown.err().contains("replai"), unknown.err());
  }
}
