package org.boothlamp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What a lamp's trace file tells. */
record LampTrace(List<Row> rows) {

  /** One change of the lamp, at the lamp's monotonic clock, and the time of its samples. */
  record Row(long monotonicNanos, long samplesNanos, String signal) {}

  /** The rows so far; none if the file is not there yet. */
  static LampTrace read(Path file) {
    if (!Files.exists(file)) {
      return new LampTrace(List.of());
    }
    try {
      return new LampTrace(Files.readAllLines(file).stream().skip(1).map(LampTrace::row).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Row row(String line) {
    String[] fields = line.split(",");
    return new Row(Long.parseLong(fields[0]), Long.parseLong(fields[1]), fields[2]);
  }

  List<String> signals() {
    return rows.stream().map(Row::signal).toList();
  }

  boolean shows(String signal) {
    return !rows.isEmpty() && rows.get(rows.size() - 1).signal().equals(signal);
  }

  /** The signals shown at some time between two moments. */
  List<String> shownBetween(long fromNanos, long untilNanos) {
    return rows.stream()
        .filter(row -> row.monotonicNanos() >= fromNanos && row.monotonicNanos() < untilNanos)
        .map(Row::signal)
        .toList();
  }
}
