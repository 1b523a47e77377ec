package org.boothlamp.hardwarenotes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The tables of the hardware notes. A row of a part table begins with the part's name in backticks,
 * then its value and tolerance; a row of a result table begins with the result's name in backticks
 * and ends with its value. Immutable once read.
 */
final class Notes {

  static final Path FOLDER = Path.of("hardware-notes");

  private final Map<String, Printed> parts = new LinkedHashMap<>();
  private final Map<String, Printed> tolerances = new LinkedHashMap<>();
  private final Map<String, Printed> results = new LinkedHashMap<>();

  private boolean inParts;

  private Notes() {}

  static Notes read(String... names) {
    Notes notes = new Notes();
    for (String name : names) {
      lines(name).forEach(notes::take);
    }
    return notes;
  }

  static List<String> lines(String name) {
    try {
      return Files.readAllLines(FOLDER.resolve(name));
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private void take(String line) {
    if (line.startsWith("| part |")) {
      inParts = true;
    } else if (line.startsWith("| result |")) {
      inParts = false;
    } else if (line.startsWith("| `")) {
      takeRow(line.substring(1, line.lastIndexOf('|')).split("\\|"));
    }
  }

  private void takeRow(String[] cells) {
    String name = cells[0].strip().replace("`", "");
    if (!inParts) {
      put(results, name, cells[cells.length - 1]);
      return;
    }
    put(parts, name, cells[1]);
    if (!cells[2].isBlank()) {
      put(tolerances, name, cells[2]);
    }
  }

  private static void put(Map<String, Printed> map, String name, String cell) {
    if (map.put(name, Printed.of(cell.strip())) != null) {
      throw new IllegalStateException("two rows have the same name: " + name);
    }
  }

  /** A part's value, without prefix. */
  double part(String name) {
    return printedPart(name).value();
  }

  Printed printedPart(String name) {
    return found(parts, name);
  }

  /** A part's tolerance, as a fraction. */
  double tolerance(String name) {
    return found(tolerances, name).value();
  }

  private static Printed found(Map<String, Printed> map, String name) {
    Printed printed = map.get(name);
    if (printed == null) {
      throw new IllegalArgumentException("the notes do not say it: " + name);
    }
    return printed;
  }

  boolean hasPart(String name) {
    return parts.containsKey(name);
  }

  /** The results as printed, in the order of the pages. */
  Map<String, Printed> results() {
    return results;
  }
}
