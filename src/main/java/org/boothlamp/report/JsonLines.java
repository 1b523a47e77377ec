package org.boothlamp.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.IOException;
import java.io.Writer;

/**
 * Writes JSON objects, one a line. What is not known is null: a number that is not finite, an empty
 * code. Never closes the writer. Confined to one thread.
 */
public final class JsonLines {

  private static final JsonFactory FACTORY =
      JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

  /** Numbers are written to a millionth: finer digits are noise of adding up. */
  private static final double PER_MILLION = 1e6;

  private final JsonGenerator json;

  public JsonLines(Writer writer) throws IOException {
    json = FACTORY.createGenerator(writer);
    json.setRootValueSeparator(null);
  }

  public JsonLines start(String kind) throws IOException {
    json.writeStartObject();
    return text("kind", kind);
  }

  public void end() throws IOException {
    json.writeEndObject();
    json.writeRaw('\n');
  }

  /** Hands everything on to the writer and flushes it. */
  public void flush() throws IOException {
    json.flush();
  }

  public JsonLines number(String name, double value) throws IOException {
    json.writeFieldName(name);
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      json.writeNull();
    } else {
      json.writeNumber(rounded(value));
    }
    return this;
  }

  /** A number with all its digits, where a millionth is not fine enough. */
  public JsonLines exact(String name, double value) throws IOException {
    json.writeFieldName(name);
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      json.writeNull();
    } else {
      json.writeNumber(value);
    }
    return this;
  }

  private static double rounded(double value) {
    double scaled = value * PER_MILLION;
    return Math.abs(scaled) < Long.MAX_VALUE ? Math.round(scaled) / PER_MILLION : value;
  }

  public JsonLines count(String name, long value) throws IOException {
    json.writeNumberField(name, value);
    return this;
  }

  /** A count that is null where it is negative: not measured. */
  public JsonLines countIfMeasured(String name, long value) throws IOException {
    if (value < 0) {
      json.writeNullField(name);
      return this;
    }
    return count(name, value);
  }

  /** A text, null where it is empty. */
  public JsonLines text(String name, String value) throws IOException {
    if (value.isEmpty()) {
      json.writeNullField(name);
    } else {
      json.writeStringField(name, value);
    }
    return this;
  }

  public JsonLines truth(String name, boolean value) throws IOException {
    json.writeBooleanField(name, value);
    return this;
  }

  public JsonLines startArray(String name) throws IOException {
    json.writeArrayFieldStart(name);
    return this;
  }

  public JsonLines endArray() throws IOException {
    json.writeEndArray();
    return this;
  }

  public JsonLines startItem() throws IOException {
    json.writeStartObject();
    return this;
  }

  /** An object as a field of the one that is open. */
  public JsonLines startItem(String name) throws IOException {
    json.writeObjectFieldStart(name);
    return this;
  }

  public JsonLines endItem() throws IOException {
    json.writeEndObject();
    return this;
  }

  public JsonLines item(long value) throws IOException {
    json.writeNumber(value);
    return this;
  }

  /** A number to a hundredth: enough for a picture. */
  public JsonLines item(double value) throws IOException {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      json.writeNull();
    } else {
      json.writeNumber(Numbers.fixed(value, 2));
    }
    return this;
  }

  public JsonLines item(String text) throws IOException {
    json.writeString(text);
    return this;
  }
}
