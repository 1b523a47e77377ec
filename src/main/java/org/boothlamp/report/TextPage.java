package org.boothlamp.report;

/**
 * A page of text as it grows: cells of fixed width, wrapped sentences, headings. Widths count
 * characters, never the escape sequences of colour. Confined to one thread.
 */
final class TextPage {

  /** What a stretch of text is; only with colour does it look different. */
  enum Style {
    HEADING("1"),
    FAINT("2"),
    GREEN("32"),
    AMBER("33"),
    RED("31");

    private final String sgr;

    Style(String sgr) {
      this.sgr = sgr;
    }
  }

  private static final String SPACES = " ".repeat(64);

  private final StringBuilder out;
  private final int width;
  private final Colour colour;

  /**
   * An empty page.
   *
   * @param width characters in a line, for what is wrapped
   */
  TextPage(int width, Colour colour) {
    this.out = new StringBuilder(4_096);
    this.width = width;
    this.colour = colour;
  }

  int width() {
    return width;
  }

  TextPage text(String text) {
    out.append(text);
    return this;
  }

  TextPage styled(String text, Style style) {
    if (colour == Colour.PLAIN || text.isEmpty()) {
      return text(text);
    }
    out.append("\u001b[").append(style.sgr).append('m').append(text).append("\u001b[0m");
    return this;
  }

  TextPage newLine() {
    out.append('\n');
    return this;
  }

  TextPage line(String text) {
    return text(text).newLine();
  }

  TextPage spaces(int count) {
    for (int left = count; left > 0; left -= SPACES.length()) {
      out.append(SPACES, 0, Math.min(left, SPACES.length()));
    }
    return this;
  }

  /** A cell with its text at the right. */
  TextPage right(String text, int cellWidth) {
    return spaces(cellWidth - text.length()).text(text);
  }

  /** Where a cell starts that is appended piece by piece and then put at the right. */
  int mark() {
    return out.length();
  }

  /** Puts all since the mark at the right of a cell. */
  TextPage rightSince(int mark, int cellWidth) {
    int missing = cellWidth - (out.length() - mark);
    if (missing > 0) {
      out.insert(mark, SPACES, 0, missing);
    }
    return this;
  }

  TextPage number(double value, int decimals) {
    Numbers.append(out, value, decimals);
    return this;
  }

  TextPage duration(double seconds) {
    Durations.append(out, seconds);
    return this;
  }

  /** A cell with its text at the left. */
  TextPage left(String text, int cellWidth) {
    return text(text).spaces(cellWidth - text.length());
  }

  /** A heading with an empty line before it. */
  TextPage heading(String text) {
    return newLine().styled(text, Style.HEADING).newLine();
  }

  /** A long word or name as a heading line of its own, cut only at the end of the page. */
  TextPage nameLine(String text) {
    for (int start = 0; start < text.length(); start += width) {
      styled(text.substring(start, Math.min(text.length(), start + width)), Style.HEADING)
          .newLine();
    }
    return this;
  }

  /**
   * Words in lines no longer than the page; only a word that is longer itself is cut.
   *
   * @param first what the first line starts with
   * @param indent spaces before the words of every other line
   */
  TextPage wrapped(String first, int indent, String text) {
    text(first);
    if (first.length() + text.length() <= width) {
      return line(text);
    }
    int column = first.length();
    boolean lineStart = true;
    for (String word : text.split(" ")) {
      if (!lineStart && column + 1 + word.length() > width) {
        newLine().spaces(indent);
        column = indent;
        lineStart = true;
      }
      if (!lineStart) {
        text(" ");
        column++;
      }
      column = longWord(word, column, indent);
      lineStart = false;
    }
    return newLine();
  }

  private int longWord(String word, int column, int indent) {
    String rest = word;
    int at = column;
    while (at + rest.length() > width) {
      text(rest.substring(0, width - at)).newLine().spaces(indent);
      rest = rest.substring(width - at);
      at = indent;
    }
    text(rest);
    return at + rest.length();
  }

  @Override
  public String toString() {
    return out.toString().replace(Numbers.GLUE, ' ');
  }
}
