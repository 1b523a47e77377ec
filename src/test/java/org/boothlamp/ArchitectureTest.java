package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Who may import whom: core, then the monitor, then the edges, then the commands, then the wiring.
 * A package of the table need not exist; one outside the table must not.
 */
class ArchitectureTest {

  private static final String ROOT = "org.boothlamp";
  private static final Path SOURCES = Path.of("src/main/java/org/boothlamp");

  /** Each may import those before it. */
  private static final List<String> CORE =
      List.of(
          "signal",
          "arc",
          "procedure",
          "health",
          "judging",
          "technique",
          "calibration",
          "words",
          "report");

  /** Each may import core, monitor, and the edges named beside it. */
  private static final Map<String, Set<String>> EDGES =
      Map.of(
          "acquisition", Set.of(),
          "lamp", Set.of("acquisition"),
          "boothlog", Set.of(),
          "sync", Set.of("boothlog"),
          "settings", Set.of("acquisition", "lamp", "boothlog", "sync"),
          "page", Set.of("boothlog"));

  private static final Map<String, Set<String>> ALLOWED = table();

  /** What a library or a part of the JDK may be used in. */
  private static final Map<String, Set<String>> ONLY_IN =
      Map.of(
          "java.sql", Set.of("boothlog", "sync"),
          "org.sqlite", Set.of("boothlog", "sync"),
          "org.postgresql", Set.of("boothlog", "sync"),
          "com.pi4j", Set.of("acquisition", "lamp"),
          "com.fazecast", Set.of("acquisition", "lamp"),
          "com.sun.jna", Set.of("acquisition", "app"),
          "picocli", Set.of("cli", "app"),
          "org.tomlj", Set.of("settings", "acquisition"));

  private static final List<String> NOT_ARITHMETIC =
      List.of(
          "java.io.",
          "java.nio.file.",
          "java.nio.channels.",
          "java.net.",
          "java.sql.",
          "java.util.concurrent.",
          "java.util.logging.",
          "java.lang.Thread",
          "java.lang.Process",
          "java.time.Clock",
          "org.tinylog.",
          "org.slf4j.",
          "com.fasterxml.");

  /** The report is text as a pure function: it writes to what it is handed. */
  private static final List<String> REPORT_MAY_USE =
      List.of("java.io.IOException", "java.io.Writer", "com.fasterxml.jackson.core.");

  private static final List<String> MONITOR_MAY_USE =
      List.of("java.util.concurrent.atomic.", "java.lang.Thread");

  private static final Set<String> CLOCK_READS =
      Set.of("java.lang.System.nanoTime", "java.lang.System.currentTimeMillis");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOT);

  private static Map<String, Set<String>> table() {
    Map<String, Set<String>> allowed = new TreeMap<>();
    Set<String> before = new HashSet<>();
    for (String name : CORE) {
      allowed.put(name, Set.copyOf(before));
      before.add(name);
    }
    allowed.put("monitor", Set.copyOf(before));
    before.add("monitor");
    EDGES.forEach((name, edges) -> allowed.put(name, union(before, edges)));
    before.addAll(EDGES.keySet());
    allowed.put("cli", Set.copyOf(before));
    before.add("cli");
    allowed.put("app", Set.copyOf(before));
    return allowed;
  }

  private static Set<String> union(Set<String> one, Set<String> other) {
    Set<String> both = new HashSet<>(one);
    both.addAll(other);
    return both;
  }

  @Test
  void shouldKnowEveryPackageThatExists() throws IOException {
    Set<String> existing = new TreeSet<>(sourceFolders());
    existing.removeAll(ALLOWED.keySet());
    assertEquals(Set.of(), existing, "packages outside the import table");
  }

  @Test
  void shouldSeeTheClassesItSpeaksOf() {
    for (String name : List.of("signal", "arc", "procedure", "judging", "monitor", "app")) {
      assertFalse(classesIn(Set.of(name)).isEmpty(), "no classes found in " + name);
    }
  }

  @Test
  void shouldImportOnlyUpTheTable() {
    List<String> wrong = new ArrayList<>();
    for (JavaClass from : classesIn(ALLOWED.keySet())) {
      for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
        String target = packageOf(dependency.getTargetClass());
        boolean ours = ALLOWED.containsKey(target) && !target.equals(packageOf(from));
        if (ours && !ALLOWED.get(packageOf(from)).contains(target)) {
          wrong.add(dependency.getDescription());
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void shouldHaveNoCycles() {
    SlicesRuleDefinition.slices()
        .matching(ROOT + ".(*)..")
        .should()
        .beFreeOfCycles()
        .check(CLASSES);
  }

  @Test
  void shouldKeepTheCoreArithmetic() {
    Set<String> pure = new HashSet<>(CORE);
    pure.remove("report");
    assertEquals(List.of(), uses(pure, ArchitectureTest::isNotArithmetic));
  }

  @Test
  void shouldLetTheReportOnlyWriteToWhatItIsHanded() {
    assertEquals(
        List.of(),
        uses(Set.of("report"), name -> isNotArithmetic(name) && !startsWith(REPORT_MAY_USE, name)));
  }

  @Test
  void shouldKeepTheMonitorFreeOfDevicesAndDisks() {
    assertEquals(
        List.of(),
        uses(
            Set.of("monitor"),
            name -> isNotArithmetic(name) && !startsWith(MONITOR_MAY_USE, name)));
  }

  @Test
  void shouldTakeTheTimeInTheCoreFromTheSamples() {
    List<String> reads = new ArrayList<>();
    for (JavaClass from : classesIn(Set.copyOf(CORE))) {
      for (JavaAccess<?> access : from.getAccessesFromSelf()) {
        String target = access.getTargetOwner().getName() + "." + access.getName();
        boolean now = target.startsWith("java.time.") && access.getName().equals("now");
        if (CLOCK_READS.contains(target) || now) {
          reads.add(access.getDescription());
        }
      }
    }
    assertEquals(List.of(), reads);
  }

  @Test
  void shouldKeepEachLibraryInItsRoom() {
    ONLY_IN.forEach(
        (library, rooms) -> {
          Set<String> others = new HashSet<>(ALLOWED.keySet());
          others.removeAll(rooms);
          assertEquals(List.of(), uses(others, name -> name.startsWith(library + ".")), library);
        });
  }

  /** A comment alone leaves no class file, so this looks at the sources. */
  @Test
  void shouldSayInEveryPackageWhatItIsFor() throws IOException {
    List<String> silent =
        sourceFolders().stream()
            .filter(name -> !Files.isRegularFile(SOURCES.resolve(name + "/package-info.java")))
            .toList();
    assertEquals(List.of(), silent, "packages without a package-info.java");
  }

  private static List<String> sourceFolders() throws IOException {
    try (Stream<Path> folders = Files.walk(SOURCES)) {
      return folders
          .filter(Files::isDirectory)
          .filter(folder -> !folder.equals(SOURCES))
          .map(folder -> SOURCES.relativize(folder).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  private static List<JavaClass> classesIn(Set<String> packages) {
    return CLASSES.stream().filter(type -> packages.contains(packageOf(type))).toList();
  }

  private static String packageOf(JavaClass type) {
    String name = type.getPackageName();
    return name.startsWith(ROOT + ".") ? name.substring(ROOT.length() + 1) : "";
  }

  private static List<String> uses(Set<String> packages, Predicate<String> forbidden) {
    return classesIn(packages).stream()
        .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
        .filter(
            dependency ->
                forbidden.test(dependency.getTargetClass().getBaseComponentType().getName()))
        .map(Dependency::getDescription)
        .sorted()
        .toList();
  }

  private static boolean isNotArithmetic(String name) {
    return startsWith(NOT_ARITHMETIC, name);
  }

  private static boolean startsWith(List<String> prefixes, String name) {
    return prefixes.stream().anyMatch(name::startsWith);
  }
}
