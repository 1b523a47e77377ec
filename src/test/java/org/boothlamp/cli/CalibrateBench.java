package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.report.Colour;
import org.boothlamp.testing.BenchParts;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.HeldCalibrationBook;
import org.boothlamp.testing.LoadFollower;
import org.boothlamp.testing.SettableLoad;
import org.boothlamp.testing.StreamSource;

/**
 * A booth beside a load that follows what the command says, as fast as it can be read; a book in
 * memory.
 */
final class CalibrateBench {

  /** Of a simulated booth: 1200 A and 100 V over 12 bits. */
  static final double AMPS_PER_COUNT = 1200.0 / 4096;

  static final double VOLTS_PER_COUNT = 100.0 / 4096;

  private static final String FULL_SCALE =
      """
      [calibration]
      current_full_scale_a = 500
      voltage_full_scale_v = 50
      """;

  final SettableLoad load = new SettableLoad(AMPS_PER_COUNT, VOLTS_PER_COUNT).clamp(1.04, 3);
  final HeldCalibrationBook book = new HeldCalibrationBook();
  final BoothFolder booth;
  private final Path folder;
  private SettableLoad followed = load;

  CalibrateBench(Path folder) {
    this.folder = folder;
    booth = new BoothFolder(folder).extra(FULL_SCALE);
    booth.write();
  }

  /** Words of the options that say which meter, for a meter that is right to the digit. */
  static List<String> meter() {
    return List.of(
        "--technician", "K-2",
        "--meter-make", "bench meter",
        "--meter-serial", "M-1",
        "--certificate", "C-77",
        "--certificate-date", LocalDate.now().minusMonths(2).toString(),
        "--accuracy-percent", "0.1",
        "--accuracy-counts", "2",
        "--resolution", "0.1");
  }

  /** From now on nobody sets the load. */
  void leaveTheLoadAlone() {
    followed = new SettableLoad(1, 1);
  }

  /** A points file: a header and these lines. */
  Path points(String... lines) {
    return file("points.csv", "level,direction,reference", lines);
  }

  Path file(String name, String header, String... lines) {
    try {
      return Files.writeString(
          folder.resolve(name), header + "\r\n" + String.join("\r\n", lines) + "\r\n");
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** Up and down again in five levels, with a right reference. */
  Path soundPoints() {
    return points(
        "0,rising,0",
        "125,rising,125",
        "250,rising,250",
        "375,rising,375",
        "500,rising,500",
        "375,falling,375",
        "250,falling,250",
        "125,falling,125",
        "0,falling,0");
  }

  /** Runs calibrate with these words; nobody types. */
  CommandRun run(Object... words) {
    return typing("", words);
  }

  /** Runs it and types these lines, all at once. */
  CommandRun typing(String typed, Object... words) {
    BenchParts parts = new BenchParts().book(book).source(() -> new StreamSource(load, 1000));
    return typing(parts.parts(), typed, words);
  }

  /** Runs it on the source of the settings. */
  CommandRun runOnItsSource(Object... words) {
    return typing(new BenchParts().book(book).parts(), "", words);
  }

  private CommandRun typing(Parts parts, String typed, Object... words) {
    List<String> all = new ArrayList<>(List.of("calibrate"));
    for (Object word : words) {
      if (word instanceof List<?> several) {
        several.forEach(each -> all.add(each.toString()));
      } else {
        all.add(word.toString());
      }
    }
    Collections.addAll(all, "--settings", booth.settings().toString());
    LoadFollower out = new LoadFollower(followed);
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            80,
            Colour.PLAIN,
            new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
    int exitCode =
        BoothlampCommand.commandLine(parts, terminal).execute(all.toArray(String[]::new));
    return new CommandRun(exitCode, out.text(), err.toString(StandardCharsets.UTF_8));
  }

  /** The only calibration in the book. */
  CalibrationRecord only() {
    assertEquals(1, book.history().records().size());
    return book.history().records().get(0);
  }
}
