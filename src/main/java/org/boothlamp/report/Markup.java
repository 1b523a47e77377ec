package org.boothlamp.report;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * HTML that is well-formed XML as well, as it grows. All text and every attribute is made visible
 * and escaped here, so that nothing typed by a person can become markup. Confined to one thread.
 */
public final class Markup {

  private final StringBuilder out = new StringBuilder(32_768);
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Begins an element.
   *
   * @param attributes names and values in turn
   */
  public Markup open(String tag, String... attributes) {
    begin(tag, attributes);
    out.append('>');
    open.push(tag);
    return this;
  }

  /** Ends the innermost element, on a line of its own. */
  public Markup close() {
    out.append("</").append(open.pop()).append(">\n");
    return this;
  }

  /** An element with nothing in it. */
  public Markup empty(String tag, String... attributes) {
    begin(tag, attributes);
    out.append("/>\n");
    return this;
  }

  /** An element with only text in it. */
  public Markup leaf(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  /** Text, made visible and escaped. */
  public Markup text(String text) {
    appendEscaped(VisibleText.of(text));
    return this;
  }

  /** What the program itself wrote and needs no escaping: a document type, a style sheet. */
  public Markup verbatim(String trusted) {
    out.append(trusted);
    return this;
  }

  private void begin(String tag, String... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      appendEscaped(VisibleText.of(attributes[i + 1]));
      out.append('"');
    }
  }

  private void appendEscaped(String text) {
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      switch (character) {
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '&' -> out.append("&amp;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(character);
      }
    }
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
