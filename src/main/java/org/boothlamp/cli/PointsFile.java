package org.boothlamp.cli;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boothlamp.calibration.Direction;

/**
 * The points of an unattended calibration: a CSV file (RFC 4180) with a header that names its
 * columns, {@code level,direction,reference} and, where needed, {@code discard_reason} and {@code
 * confirmed}. Immutable.
 *
 * @param rows in the order they are to be taken
 */
record PointsFile(List<Row> rows) {

  /**
   * A point to take.
   *
   * @param line in the file, from 1
   * @param level to be set, in amps or volts
   * @param direction to come from
   * @param reference what the meter said; NaN if a meter on a line is to be read
   * @param discardReason why it is thrown away at once; empty if it is used
   * @param isConfirmed true if a reference that looks wrong is right all the same
   */
  record Row(
      int line,
      double level,
      Direction direction,
      double reference,
      String discardReason,
      boolean isConfirmed) {}

  private static final List<String> COLUMNS =
      List.of("level", "direction", "reference", "discard_reason", "confirmed");
  private static final int NEEDED_COLUMNS = 3;

  PointsFile {
    rows = List.copyOf(rows);
  }

  /**
   * Reads a file whole.
   *
   * @param readsMeter true if references may be left empty
   * @throws IllegalArgumentException with file, line and column of the first thing that is wrong
   */
  static PointsFile read(Path file, boolean readsMeter) {
    Reading reading = new Reading(file, readsMeter);
    try {
      return reading.points(CsvReader.read(Files.readString(file)));
    } catch (CsvReader.CsvException broken) {
      throw reading.refused(broken.line(), "", broken.getMessage());
    } catch (NoSuchFileException missing) {
      throw new IllegalArgumentException(file + ": no such file; correct the path of --points");
    } catch (MalformedInputException notText) {
      throw new IllegalArgumentException(file + ": is no UTF-8 text; save it as UTF-8");
    } catch (IOException unreadable) {
      throw new IllegalArgumentException(
          file + ": cannot be read (" + unreadable + "); check its rights");
    }
  }

  /** One file being read. */
  private static final class Reading {

    private final Path file;
    private final boolean readsMeter;
    private List<String> header;

    Reading(Path file, boolean readsMeter) {
      this.file = file;
      this.readsMeter = readsMeter;
    }

    PointsFile points(List<CsvReader.Row> lines) {
      if (lines.size() < 2) {
        throw refused(1, "", "needs a header and a line for each point; write them");
      }
      readHeader(lines.get(0));
      List<Row> rows = new ArrayList<>();
      for (CsvReader.Row line : lines.subList(1, lines.size())) {
        rows.add(row(line));
      }
      return new PointsFile(rows);
    }

    private void readHeader(CsvReader.Row line) {
      header = line.fields();
      for (String column : header) {
        if (!COLUMNS.contains(column)) {
          throw refused(line.line(), column, "is no column; known are " + COLUMNS);
        }
        if (header.indexOf(column) != header.lastIndexOf(column)) {
          throw refused(line.line(), column, "stands there twice; remove one");
        }
      }
      for (String column : COLUMNS.subList(0, NEEDED_COLUMNS)) {
        if (!header.contains(column)) {
          throw refused(line.line(), column, "is missing; the header is level,direction,reference");
        }
      }
    }

    private Row row(CsvReader.Row line) {
      if (line.fields().size() != header.size()) {
        throw refused(
            line.line(),
            "",
            "has "
                + line.fields().size()
                + " fields and the header "
                + header.size()
                + "; if a number was written with a decimal comma, write a full stop");
      }
      return new Row(
          line.line(),
          number(line, "level"),
          direction(line),
          reference(line),
          text(line, "discard_reason").strip(),
          confirmed(line));
    }

    private String text(CsvReader.Row line, String column) {
      int place = header.indexOf(column);
      return place < 0 ? "" : line.fields().get(place);
    }

    private double number(CsvReader.Row line, String column) {
      NumberText number = NumberText.of(text(line, column));
      if (!number.isNumber()) {
        throw refused(line.line(), column, "\"" + text(line, column) + "\": " + number.question());
      }
      return number.value();
    }

    private double reference(CsvReader.Row line) {
      if (!text(line, "reference").isBlank()) {
        return number(line, "reference");
      }
      if (!readsMeter) {
        throw refused(
            line.line(), "reference", "is empty; write it, or let --meter PORT read the meter");
      }
      return Double.NaN;
    }

    private Direction direction(CsvReader.Row line) {
      String word = text(line, "direction").strip();
      for (Direction direction : Direction.values()) {
        if (direction.name().toLowerCase(Locale.ROOT).equals(word)) {
          return direction;
        }
      }
      throw refused(line.line(), "direction", "must be rising or falling, is \"" + word + "\"");
    }

    private boolean confirmed(CsvReader.Row line) {
      String word = text(line, "confirmed").strip();
      if (!word.isEmpty() && !word.equals("yes")) {
        throw refused(line.line(), "confirmed", "must be yes or empty, is \"" + word + "\"");
      }
      return word.equals("yes");
    }

    IllegalArgumentException refused(int line, String column, String what) {
      return new IllegalArgumentException(
          file + ", line " + line + (column.isEmpty() ? "" : ", column " + column) + ": " + what);
    }
  }
}
