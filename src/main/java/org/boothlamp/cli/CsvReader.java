package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * Comma-separated values as RFC 4180 has them, read strictly: quotes only around whole fields, a
 * quote inside one doubled, CR LF or LF at the end of a line. Lines without anything are left out.
 */
final class CsvReader {

  /**
   * One record.
   *
   * @param line on which it begins, from 1
   * @param fields in order, unquoted
   */
  record Row(int line, List<String> fields) {}

  /** What breaks a rule, and on which line. */
  static final class CsvException extends Exception {

    private static final long serialVersionUID = 1L;
    private final int line;

    CsvException(int line, String message) {
      super(message);
      this.line = line;
    }

    int line() {
      return line;
    }
  }

  private final String text;
  private int place;
  private int line = 1;

  private CsvReader(String text) {
    this.text = text;
  }

  /** All records of a text. */
  static List<Row> read(String text) throws CsvException {
    CsvReader reader = new CsvReader(text);
    List<Row> rows = new ArrayList<>();
    while (reader.place < text.length()) {
      Row row = reader.row();
      if (!row.fields().equals(List.of(""))) {
        rows.add(row);
      }
    }
    return rows;
  }

  private Row row() throws CsvException {
    int begun = line;
    List<String> fields = new ArrayList<>();
    fields.add(field());
    while (isAt(',')) {
      place++;
      fields.add(field());
    }
    endLine();
    return new Row(begun, List.copyOf(fields));
  }

  private String field() throws CsvException {
    return isAt('"') ? quoted() : plain();
  }

  private String plain() throws CsvException {
    int from = place;
    while (place < text.length() && ",\r\n".indexOf(text.charAt(place)) < 0) {
      if (text.charAt(place) == '"') {
        throw new CsvException(line, "a quote stands inside a field; put quotes around all of it");
      }
      place++;
    }
    return text.substring(from, place);
  }

  private String quoted() throws CsvException {
    int begun = line;
    StringBuilder field = new StringBuilder();
    place++;
    while (place < text.length()) {
      char next = text.charAt(place++);
      if (next != '"') {
        line += next == '\n' ? 1 : 0;
        field.append(next);
      } else if (isAt('"')) {
        place++;
        field.append('"');
      } else {
        return field.toString();
      }
    }
    throw new CsvException(begun, "a quote is opened and never closed; close it");
  }

  private void endLine() throws CsvException {
    if (isAt('\r')) {
      place++;
      if (!isAt('\n')) {
        throw new CsvException(line, "a line ends with CR alone; end it with LF or CR LF");
      }
    }
    if (isAt('\n')) {
      place++;
      line++;
    } else if (place < text.length()) {
      throw new CsvException(line, "something follows a closing quote; put a comma there");
    }
  }

  private boolean isAt(char wanted) {
    return place < text.length() && text.charAt(place) == wanted;
  }
}
