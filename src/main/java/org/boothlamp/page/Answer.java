package org.boothlamp.page;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** What goes back. Immutable; the headers that every answer has are added later. */
public final class Answer {

  /** Type of a page. */
  public static final String HTML = "text/html; charset=utf-8";

  private static final byte[] NOTHING = new byte[0];

  private final int status;
  private final byte[] body;
  private final Map<String, String> headers;
  private final LiveKind live;

  private Answer(int status, byte[] body, Map<String, String> headers, LiveKind live) {
    this.status = status;
    this.body = body;
    this.headers = headers;
    this.live = live;
  }

  /**
   * A body.
   *
   * @param type of its content
   */
  public static Answer of(int status, String type, String text) {
    return of(status, type, text.getBytes(StandardCharsets.UTF_8));
  }

  /** The same of bytes, which are not copied. */
  public static Answer of(int status, String type, byte[] bytes) {
    return new Answer(status, bytes, Map.of("Content-Type", type), null);
  }

  /** Sends the browser on to another address of this page, after a form. */
  public static Answer seeOther(String path) {
    return new Answer(303, NOTHING, Map.of("Location", path), null);
  }

  static Answer empty(int status) {
    return new Answer(status, NOTHING, Map.of(), null);
  }

  static Answer live(LiveKind kind) {
    return new Answer(200, NOTHING, Map.of("Content-Type", "text/event-stream"), kind);
  }

  /** The same answer with one header more. */
  public Answer with(String name, String value) {
    Map<String, String> more = new LinkedHashMap<>(headers);
    more.put(name, value);
    return new Answer(status, body, more, live);
  }

  int status() {
    return status;
  }

  byte[] body() {
    return body;
  }

  Map<String, String> headers() {
    return headers;
  }

  String text() {
    return new String(body, StandardCharsets.UTF_8);
  }

  /** Not null if the answer goes on for as long as the visitor looks. */
  LiveKind live() {
    return live;
  }
}
