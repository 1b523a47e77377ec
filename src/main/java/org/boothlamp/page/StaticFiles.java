package org.boothlamp.page;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * Scripts and styles out of the jar: a fixed table, so that no path leads anywhere else. Immutable.
 */
final class StaticFiles implements View {

  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/";
  private static final String SCRIPT = "text/javascript; charset=utf-8";
  private static final String STYLE = "text/css; charset=utf-8";
  private static final String TEXT = "text/plain; charset=utf-8";

  private final Map<String, Answer> files = new TreeMap<>();
  private final String version;

  StaticFiles() {
    add("uPlot.min.js", SCRIPT, resource(UPLOT + "dist/uPlot.iife.min.js"));
    add("uPlot.min.css", STYLE, resource(UPLOT + "dist/uPlot.min.css"));
    add("uPlot-LICENSE.txt", TEXT, resource(UPLOT + "LICENSE"));
    add("page.css", STYLE, ScreenStyle.sheet());
    add("icon.svg", "image/svg+xml", resource("icon.svg"));
    for (String script :
        new String[] {"follow.js", "lamp.js", "live.js", "class.js", "replay.js"}) {
      add(script, SCRIPT, resource(script));
    }
    version = versionOf(files);
  }

  private void add(String name, String type, String text) {
    files.put(
        name, Answer.of(200, type, text).with("Cache-Control", "max-age=31536000, immutable"));
  }

  static String resource(String name) {
    try (InputStream in = StaticFiles.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("missing in the jar: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException failure) {
      throw new IllegalStateException("unreadable in the jar: " + name, failure);
    }
  }

  private static String versionOf(Map<String, Answer> files) {
    StringBuilder all = new StringBuilder();
    files.values().forEach(file -> all.append(file.text()));
    return Secrets.digest(new byte[] {1}, all.toString()).substring(0, 12);
  }

  /** Changes when any file does: pages name it, so that browsers may keep what they have. */
  String version() {
    return version;
  }

  @Override
  public String path() {
    return "/static/";
  }

  @Override
  public Right right() {
    return Right.NONE;
  }

  @Override
  public Answer get(Request request) {
    Answer file = files.get(request.rest(this));
    if (file == null) {
      throw new PageException(404, "page.error.none");
    }
    return file;
  }
}
