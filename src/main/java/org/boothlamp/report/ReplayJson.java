package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;

/**
 * A replay as JSON lines for programs: {@code segment}, {@code touch} and {@code fault} in order of
 * time, then one {@code summary}. Seconds count from the start of the recording; what is not known
 * is null.
 */
public final class ReplayJson {

  private final JsonLines lines;

  private ReplayJson(JsonLines lines) {
    this.lines = lines;
  }

  /**
   * Writes the replay and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(Replay replay, Writer writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    ReplayJson json = new ReplayJson(lines);
    replay.tell(json.new Entries());
    json.writeSummary(replay);
    lines.flush();
  }

  /** Writes the entries as they are told. */
  private final class Entries implements Replay.Teller<IOException> {

    @Override
    public void segment(RunSummary summary) throws IOException {
      RunRecord run = summary.run();
      lines.start("segment").number("start_s", run.startSeconds());
      lines.number("end_s", run.startSeconds() + run.lengthSeconds());
      RunJson.writeFigures(lines, run);
      RunJson.writeExcursions(lines, run, run.startSeconds());
      RunJson.writeExtras(lines, run);
      lines.end();
    }

    @Override
    public void touch(TouchRecord touch) throws IOException {
      lines.start("touch").number("start_s", touch.startSeconds());
      lines.number("end_s", touch.startSeconds() + touch.lengthSeconds());
      lines.truth("stuck", touch.stuck()).end();
    }

    @Override
    public void fault(EventRecord fault) throws IOException {
      lines.start("fault").number("start_s", fault.startSeconds());
      lines.number("end_s", fault.startSeconds() + fault.lengthSeconds());
      lines.text("what", fault.what()).end();
    }
  }

  private void writeSummary(Replay replay) throws IOException {
    Figures total = replay.total();
    lines.start("summary").text("recording", replay.recording());
    lines.number("length_s", replay.lengthSeconds()).count("segments", total.runs());
    lines.count("touches", replay.records().touches().size());
    lines.number("arc_s", total.arcSeconds()).number("green_s", total.greenSeconds());
    lines.number("amber_s", total.amberSeconds()).number("red_s", total.redSeconds());
    lines.number("settling_s", total.settlingSeconds());
    lines.text("procedure", replay.procedureId()).text("pass", replay.pass());
    lines.number("in_window_share", total.insideShare()).number("energy_j", total.energyJoules());
    lines.number("fault_s", total.faultSeconds()).number("missing_s", total.missingSeconds());
    lines.count("faults", replay.faults().size());
    writeOtherEvents(replay);
    lines.end();
  }

  private void writeOtherEvents(Replay replay) throws IOException {
    lines.startArray("other_events");
    for (EventRecord event : replay.otherEvents()) {
      lines.startItem().number("start_s", event.startSeconds()).text("what", event.what());
      lines.count("count", event.count()).endItem();
    }
    lines.endArray();
  }
}
