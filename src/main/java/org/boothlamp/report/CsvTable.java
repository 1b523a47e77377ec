package org.boothlamp.report;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A table as CSV (RFC 4180: a header line, lines ended by CR LF, as many fields in each). Numbers
 * have no grouping and are empty if not known. A free text that a spreadsheet would take for a
 * formula has an apostrophe in front. Confined to one thread.
 */
final class CsvTable {

  private static final String END = "\r\n";
  private static final String FORMULA_STARTS = "=+-@\t\r";

  /** Finer digits are noise of adding up. */
  private static final double PER_MILLION = 1e6;

  private final List<String> columns;
  private final StringBuilder out = new StringBuilder(16_384);
  private final Map<String, String> row = new HashMap<>();

  CsvTable(List<String> columns) {
    this.columns = List.copyOf(columns);
    append(columns);
  }

  /** A free text in the row under way. */
  CsvTable text(String column, String free) {
    boolean formula = !free.isEmpty() && FORMULA_STARTS.indexOf(free.charAt(0)) >= 0;
    return put(column, (formula ? "'" : "") + VisibleText.of(free.replace(Numbers.GLUE, ' ')));
  }

  /** A word, time or code of the program's own. */
  CsvTable word(String column, String word) {
    return put(column, word);
  }

  CsvTable count(String column, long count) {
    return put(column, Long.toString(count));
  }

  /** Rounded to a millionth; empty if it is not finite. */
  CsvTable number(String column, double value) {
    if (!Double.isFinite(value)) {
      return put(column, "");
    }
    double rounded = Math.round(value * PER_MILLION) / PER_MILLION;
    return put(column, rounded == Math.rint(rounded) ? whole(rounded) : Double.toString(rounded));
  }

  private static String whole(double value) {
    return Long.toString((long) value);
  }

  private CsvTable put(String column, String value) {
    if (!columns.contains(column)) {
      throw new IllegalArgumentException("no such column: " + column);
    }
    row.put(column, value);
    return this;
  }

  /** Ends the row; columns that were not given are empty. */
  void endRow() {
    append(columns.stream().map(column -> row.getOrDefault(column, "")).toList());
    row.clear();
  }

  private void append(Collection<String> fields) {
    String before = "";
    for (String field : fields) {
      out.append(before).append(quoted(field));
      before = ",";
    }
    out.append(END);
  }

  private static String quoted(String field) {
    boolean plain = field.chars().noneMatch(c -> c == '"' || c == ',' || c == '\r' || c == '\n');
    return plain ? field : '"' + field.replace("\"", "\"\"") + '"';
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
