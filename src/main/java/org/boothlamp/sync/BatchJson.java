package org.boothlamp.sync;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.boothlog.LogRows;
import org.boothlamp.boothlog.RowGroup;
import org.boothlamp.boothlog.RowLayout;
import org.boothlamp.boothlog.StoredRow;

/**
 * A batch as JSON Lines: first what it is, then a line a row, each row with a number of its own
 * followed by those that belong to it.
 *
 * <pre>
 *  {"boothlamp_batch":1,"booth":"B-07","log":"9f..","table":"segment","first_id":1,"last_id":2,"rows":9}
 *  {"table":"segment","row":{"id":1,"boot":1,"trainee":"T-04", ...}}
 *  {"table":"trace","row":{"segment_id":1,"first_point":0,"points":{"base64":"AAB9..."}}}
 * </pre>
 *
 * <p>Values come back exactly as they were stored. Pure functions.
 */
final class BatchJson {

  /** Version of this form. */
  private static final int VERSION = 1;

  private static final JsonFactory FACTORY = new JsonFactory();

  private BatchJson() {}

  static void write(Batch batch, OutputStream to) throws IOException {
    try (JsonGenerator json = FACTORY.createGenerator(to)) {
      json.setPrettyPrinter(new MinimalPrettyPrinter("\n"));
      writeHead(batch, json);
      for (RowGroup group : batch.groups()) {
        for (StoredRow row : group.rows()) {
          writeRow(row, json);
        }
      }
      json.writeRaw('\n');
    }
  }

  private static void writeHead(Batch batch, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeNumberField("boothlamp_batch", VERSION);
    json.writeStringField("booth", batch.booth());
    json.writeStringField("log", batch.log());
    json.writeStringField("table", batch.table());
    json.writeNumberField("first_id", batch.firstId());
    json.writeNumberField("last_id", batch.lastId());
    json.writeNumberField("rows", batch.rows());
    json.writeEndObject();
  }

  private static void writeRow(StoredRow row, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("table", row.layout().table());
    json.writeObjectFieldStart("row");
    for (int i = 0; i < row.values().length; i++) {
      json.writeFieldName(row.layout().columns().get(i));
      writeValue(row.values()[i], json);
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void writeValue(Object value, JsonGenerator json) throws IOException {
    if (value == null) {
      json.writeNull();
    } else if (value instanceof Long whole) {
      json.writeNumber(whole);
    } else if (value instanceof Double real) {
      json.writeNumber(real);
    } else if (value instanceof byte[] blob) {
      json.writeStartObject();
      json.writeBinaryField("base64", blob);
      json.writeEndObject();
    } else {
      json.writeString((String) value);
    }
  }

  /**
   * Reads a batch.
   *
   * @throws IOException if it is not a whole batch of a version known here; says why
   */
  static Batch read(InputStream from) throws IOException {
    try (JsonParser json = FACTORY.createParser(from)) {
      Map<String, Object> head = object(json);
      if (!Long.valueOf(VERSION).equals(head.get("boothlamp_batch"))) {
        throw new IOException(
            "its first line must say \"boothlamp_batch\":" + VERSION + ", but is " + head);
      }
      String table = text(head, "table");
      List<RowGroup> groups = groups(json, table);
      Batch batch = new Batch(text(head, "booth"), text(head, "log"), table, groups);
      if (!Long.valueOf(batch.rows()).equals(head.get("rows"))) {
        throw new IOException("must hold " + head.get("rows") + " rows, but holds " + batch.rows());
      }
      return batch;
    }
  }

  private static List<RowGroup> groups(JsonParser json, String table) throws IOException {
    Map<String, RowLayout> layouts = new LinkedHashMap<>();
    List<RowGroup> groups = new ArrayList<>();
    List<StoredRow> rows = new ArrayList<>();
    for (Map<String, Object> line = object(json); line != null; line = object(json)) {
      StoredRow row = row(line, layouts);
      if (row.layout().table().equals(table) && !rows.isEmpty()) {
        groups.add(group(rows));
        rows.clear();
      }
      rows.add(row);
    }
    if (rows.isEmpty()) {
      throw new IOException("holds no row");
    }
    groups.add(group(rows));
    return groups;
  }

  private static RowGroup group(List<StoredRow> rows) throws IOException {
    try {
      return new RowGroup(LogRows.numberOf(rows.get(0)), rows);
    } catch (IllegalArgumentException refused) {
      throw new IOException(refused.getMessage(), refused);
    }
  }

  private static StoredRow row(Map<String, Object> line, Map<String, RowLayout> layouts)
      throws IOException {
    if (!(line.get("row") instanceof Map<?, ?> values)) {
      throw new IOException("a line must hold a table and a row, but is " + line);
    }
    List<String> columns = values.keySet().stream().map(Object::toString).toList();
    RowLayout layout = new RowLayout(text(line, "table"), columns, List.of());
    RowLayout known = layouts.putIfAbsent(layout.table(), layout);
    // Thousands of rows share their layout.
    return new StoredRow(layout.equals(known) ? known : layout, values.values().toArray());
  }

  private static String text(Map<String, Object> line, String key) throws IOException {
    if (line.get(key) instanceof String text) {
      return text;
    }
    throw new IOException("\"" + key + "\" must be a text in " + line);
  }

  /** The next object, or null at the end. */
  private static Map<String, Object> object(JsonParser json) throws IOException {
    JsonToken token = json.nextToken();
    if (token == null) {
      return null;
    }
    return fields(json, token);
  }

  private static Map<String, Object> fields(JsonParser json, JsonToken start) throws IOException {
    if (start != JsonToken.START_OBJECT) {
      throw new IOException("must hold objects, but holds " + start);
    }
    Map<String, Object> fields = new LinkedHashMap<>();
    for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
      fields.put(name, value(json, name));
    }
    return fields;
  }

  private static Object value(JsonParser json, String name) throws IOException {
    JsonToken token = json.nextToken();
    return switch (token) {
      case VALUE_NULL -> null;
      case VALUE_NUMBER_INT -> json.getLongValue();
      case VALUE_NUMBER_FLOAT -> json.getDoubleValue();
      case VALUE_STRING -> json.getText();
      case START_OBJECT -> blobOrFields(json, name);
      default -> throw new IOException("must not hold " + token + " as a value");
    };
  }

  private static Object blobOrFields(JsonParser json, String name) throws IOException {
    if (name.equals("row")) {
      return fields(json, JsonToken.START_OBJECT);
    }
    if (!"base64".equals(json.nextFieldName())) {
      throw new IOException("bytes must be given as {\"base64\":...}");
    }
    json.nextToken();
    byte[] blob = json.getBinaryValue();
    if (json.nextToken() != JsonToken.END_OBJECT) {
      throw new IOException("bytes must be given as {\"base64\":...} and nothing else");
    }
    return blob;
  }
}
