package org.boothlamp.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.monitor.LiveSnapshot;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.report.Numbers;

/**
 * Turns what the monitor sees into server-sent events (HTML Living Standard, 9.2), once for all who
 * look. Event {@code booth} says who welds to what, at the start and at each change; event {@code
 * live} says the rest, ten times a second. Confined to the stream's thread.
 */
final class LiveFrames {

  /** After so long without a step of the monitor its last word counts no more. */
  static final long STALE_NANOS = 500_000_000L;

  private static final JsonFactory JSON = new JsonFactory();

  private final String booth;
  private final LiveFeed feed;
  private final LiveSnapshot now = new LiveSnapshot();
  private Assignment told;
  private long toldPoints;
  private long fromPoint;
  private long lastSteps = -1;
  private long lastStepNanos;
  private boolean stale;
  private boolean assignmentChanged;

  LiveFrames(String booth, LiveFeed feed) {
    this.booth = booth;
    this.feed = feed;
  }

  /** Looks at the monitor; the frames after it are of this moment. */
  void look(long nowNanos) {
    feed.read(now);
    if (now.steps != lastSteps) {
      lastSteps = now.steps;
      lastStepNanos = nowNanos;
    }
    stale = nowNanos - lastStepNanos > STALE_NANOS;
    fromPoint = Math.max(toldPoints, now.firstPoint());
    toldPoints = now.points;
    assignmentChanged = now.assignment != told;
    told = now.assignment;
  }

  /** What is new since the last look. */
  byte[] next(LiveKind kind) {
    String live = event("live", json -> writeLive(json, kind, fromPoint));
    return bytes(assignmentChanged ? boothEvent() + live : live);
  }

  /** For somebody new: all there is. */
  byte[] first(LiveKind kind) {
    return bytes(
        "retry: 1000\n\n"
            + boothEvent()
            + event("live", json -> writeLive(json, kind, now.firstPoint())));
  }

  private String boothEvent() {
    return event("booth", this::writeBooth);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @FunctionalInterface
  private interface Writing {
    void to(JsonGenerator json) throws IOException;
  }

  /** JSON has no line ends of its own, so that one data line is enough. */
  private static String event(String name, Writing writing) {
    StringWriter text = new StringWriter(512);
    text.append("event: ").append(name).append("\ndata: ");
    try (JsonGenerator json = JSON.createGenerator(text)) {
      json.writeStartObject();
      writing.to(json);
      json.writeEndObject();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.append("\n\n").toString();
  }

  private void writeBooth(JsonGenerator json) throws IOException {
    json.writeStringField("booth", booth);
    json.writeStringField("trainee", now.assignment.trainee());
    JudgingPlan plan = now.assignment.plan();
    json.writeStringField("procedure", plan == null ? "" : plan.procedure().id());
    json.writeStringField("revision", plan == null ? "" : plan.procedure().revision());
    json.writeStringField("pass", plan == null ? "" : plan.pass().name());
    json.writeArrayFieldStart("windows");
    for (int k = 0; plan != null && k < plan.size(); k++) {
      writeWindow(json, plan.band(k));
    }
    json.writeEndArray();
  }

  private static void writeWindow(JsonGenerator json, CautionBand band) throws IOException {
    json.writeStartObject();
    json.writeStringField("quantity", band.window().quantity().key());
    json.writeStringField("unit", band.window().quantity().unit());
    writeNumber(json, "low", band.window().low(), 3);
    writeNumber(json, "high", band.window().high(), 3);
    writeNumber(json, "band", band.band(), 3);
    json.writeEndObject();
  }

  private void writeLive(JsonGenerator json, LiveKind kind, long from) throws IOException {
    json.writeStringField("signal", (stale ? Signal.FAULT : now.signal).word());
    json.writeBooleanField("stale", stale);
    writeNumber(json, "amps_a", stale ? Double.NaN : now.amps, 1);
    writeNumber(json, "volts_v", stale ? Double.NaN : now.volts, 2);
    writeNumber(json, "arc_s", now.arcSeconds, 2);
    if (kind == LiveKind.CHART) {
      writePoints(json, from);
    }
  }

  private static void writeNumber(JsonGenerator json, String name, double value, int decimals)
      throws IOException {
    json.writeFieldName(name);
    writeNumber(json, value, decimals);
  }

  private static void writeNumber(JsonGenerator json, double value, int decimals)
      throws IOException {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      json.writeNull();
    } else {
      json.writeNumber(Numbers.fixed(value, decimals));
    }
  }

  @FunctionalInterface
  private interface PointValue {
    double at(int place);
  }

  private void writePoints(JsonGenerator json, long from) throws IOException {
    json.writeObjectFieldStart("points");
    writeColumn(json, "run", from, 0, place -> now.pointRun[place]);
    writeColumn(
        json, "t_s", from, 2, place -> (now.pointIndex[place] + 1) / (double) LogEntry.TRACE_HZ);
    writeColumn(json, "amps_a", from, 1, place -> now.pointAmps[place]);
    writeColumn(json, "volts_v", from, 2, place -> now.pointVolts[place]);
    writeColumn(json, "average_amps_a", from, 1, place -> now.pointAverageAmps[place]);
    writeColumn(json, "average_volts_v", from, 2, place -> now.pointAverageVolts[place]);
    json.writeEndObject();
  }

  private void writeColumn(
      JsonGenerator json, String name, long from, int decimals, PointValue value)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (long point = from; point < now.points; point++) {
      writeNumber(json, value.at((int) (point % LiveFeed.POINTS)), decimals);
    }
    json.writeEndArray();
  }
}
