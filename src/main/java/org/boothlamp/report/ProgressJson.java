package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;

/**
 * Progress as JSON lines for programs: one {@code progress}; of each trainee's pass one {@code
 * progress-pass} and a {@code progress-day} for each day. Shares are 0 to 1, what is not known is
 * null.
 */
public final class ProgressJson {

  private final JsonLines lines;

  private ProgressJson(JsonLines lines) {
    this.lines = lines;
  }

  /**
   * Writes everything and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(Progress progress, Writer writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    new ProgressJson(lines).writeAll(progress);
    lines.flush();
  }

  private void writeAll(Progress progress) throws IOException {
    ShiftSpan span = progress.span();
    lines
        .start("progress")
        .text("from", span.local(span.fromWallMillis()).toOffsetDateTime().toString());
    lines.text("until", span.local(span.untilWallMillis()).toOffsetDateTime().toString());
    lines.text("zone", span.zone().getId()).count("trainees", progress.trainees().size()).end();
    for (TraineeProgress trainee : progress.trainees()) {
      for (PassProgress pass : trainee.passes()) {
        writePass(trainee.trainee(), pass);
      }
    }
  }

  private void writePass(String trainee, PassProgress pass) throws IOException {
    start("progress-pass", trainee, pass.pass());
    writeFigures(pass.total());
    lines.count("judged_runs", pass.judgedRuns());
    WilsonInterval interval = pass.interval();
    lines.number("in_window_share_low", interval == null ? Double.NaN : interval.low());
    lines.number("in_window_share_high", interval == null ? Double.NaN : interval.high());
    Trend trend = pass.trend();
    lines.number("change_per_ten_runs", trend == null ? Double.NaN : trend.perTenRuns());
    lines.number("change_half_width", trend == null ? Double.NaN : trend.halfWidth());
    writeSteady(pass.steady());
    lines.end();
    for (ProgressDay day : pass.days()) {
      start("progress-day", trainee, pass.pass());
      lines.text("day", day.day().toString());
      writeFigures(day.figures());
      lines.end();
    }
  }

  private void start(String kind, String trainee, PassKey pass) throws IOException {
    lines.start(kind).text("trainee", trainee).text("procedure", pass.procedureId());
    lines.text("revision", pass.revision()).text("pass", pass.pass());
  }

  private void writeFigures(Figures figures) throws IOException {
    lines.count("runs", figures.runs()).number("arc_s", figures.arcSeconds());
    lines.number("judged_s", figures.judgedSeconds());
    lines.number("in_window_share", figures.insideShare());
  }

  private void writeSteady(SteadyCount steady) throws IOException {
    lines.countIfMeasured("rule_runs", steady == null ? -1 : steady.rule().runs());
    lines.number("rule_least_share", steady == null ? Double.NaN : steady.rule().leastShare());
    lines.countIfMeasured("in_a_row", steady == null ? -1 : steady.lastInARow());
    lines.countIfMeasured("longest_in_a_row", steady == null ? -1 : steady.longestInARow());
  }
}
