package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import org.boothlamp.words.Phrases;

/**
 * A replay of logged runs as JSON lines for programs: {@code replay}, who welded what; then {@code
 * frame}, 20 a second; then {@code figures}. Seconds count from the start of each run; what is not
 * known is null.
 */
public final class WeldReplayJson {

  private final JsonLines lines;
  private final SideBySide pair;
  private final Phrases phrases;

  private WeldReplayJson(JsonLines lines, SideBySide pair, Phrases phrases) {
    this.lines = lines;
    this.pair = pair;
    this.phrases = phrases;
  }

  /**
   * Writes the replay and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(SideBySide pair, Phrases phrases, Writer writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    WeldReplayJson json = new WeldReplayJson(lines, pair, phrases);
    json.writeHead();
    json.writeFrames();
    json.writeFigures();
    lines.flush();
  }

  private void writeHead() throws IOException {
    lines.start("replay");
    writeRun(pair.one());
    if (pair.beside() != null) {
      lines.startItem("beside");
      writeRun(pair.beside());
      lines.endItem();
    }
    lines.number("frame_s", WeldReplay.FRAME_SECONDS).count("frames", pair.frames()).end();
  }

  private void writeRun(WeldReplay replay) throws IOException {
    RunRecord run = replay.run();
    lines.count("id", run.id()).text("booth", run.booth()).text("trainee", run.trainee());
    lines.text("procedure", run.procedureId()).text("revision", run.procedureRevision());
    lines.text("pass", run.pass());
    lines.text("start", Instant.ofEpochMilli(run.startWallMillis()).toString());
    lines.number("arc_s", run.lengthSeconds());
    lines.truth("reference_weld", run.notes().isReference());
  }

  private void writeFrames() throws IOException {
    ReplayStory story = ReplayStory.of(pair.one(), phrases);
    ReplayStory other = pair.beside() == null ? null : ReplayStory.of(pair.beside(), phrases);
    for (int k = 0; k < pair.frames(); k++) {
      ReplayFrame frame = pair.one().frame(k);
      lines.start("frame").number("t_s", frame.seconds());
      writeFrame(frame, story);
      if (other != null) {
        lines.startItem("beside");
        writeFrame(pair.beside().frame(k), other);
        lines.endItem();
      }
      lines.end();
    }
  }

  private void writeFrame(ReplayFrame frame, ReplayStory story) throws IOException {
    lines.number("amps", frame.amps());
    lines.number("lowest_amps", frame.lowestAmps()).number("highest_amps", frame.highestAmps());
    lines.number("average_amps", frame.averageAmps()).number("volts", frame.volts());
    lines.number("lowest_volts", frame.lowestVolts());
    lines.number("highest_volts", frame.highestVolts());
    lines.number("average_volts", frame.averageVolts()).text("signal", frame.signal().word());
    lines.text("says", plain(story.at(frame.seconds()).says()));
  }

  private static String plain(String says) {
    return says.replace(Numbers.GLUE, ' ');
  }

  private void writeFigures() throws IOException {
    lines.start("figures");
    for (ComparedFigure figure : pair.figures()) {
      lines.number(figure.key(), figure.one());
    }
    if (pair.beside() != null) {
      lines.startItem("beside");
      for (ComparedFigure figure : pair.figures()) {
        lines.number(figure.key(), figure.beside());
      }
      lines.endItem();
    }
    lines.end();
  }
}
