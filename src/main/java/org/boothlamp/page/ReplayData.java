package org.boothlamp.page;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.JsonLines;
import org.boothlamp.report.RawColumns;
import org.boothlamp.report.ReplayFrame;
import org.boothlamp.report.ReplaySpell;
import org.boothlamp.report.ReplayStory;
import org.boothlamp.report.ShortSpell;
import org.boothlamp.report.SideBySide;
import org.boothlamp.report.WeldReplay;
import org.boothlamp.words.Phrases;

/** What the script of a replay draws, as JSON. What is not known is null. */
final class ReplayData {

  @FunctionalInterface
  private interface Writing {
    void to(JsonLines json) throws IOException;
  }

  private ReplayData() {}

  /** Both runs with all frames. */
  static String of(SideBySide pair, Phrases phrases) {
    return text(
        json -> {
          json.start("replay").number("frame_s", WeldReplay.FRAME_SECONDS);
          json.count("frames", pair.frames());
          json.startItem("one");
          write(json, pair.one(), phrases);
          json.endItem();
          if (pair.beside() != null) {
            json.startItem("beside");
            write(json, pair.beside(), phrases);
            json.endItem();
          }
          json.end();
        });
  }

  private static void write(JsonLines json, WeldReplay replay, Phrases phrases) throws IOException {
    json.count("id", replay.run().id());
    json.truth("alternating", replay.isAlternating());
    json.startArray("windows");
    for (Window window : replay.run().windows()) {
      json.startItem().text("quantity", window.quantity().key());
      json.number("low", window.low()).number("high", window.high()).endItem();
    }
    json.endArray();
    column(json, "amps", replay, ReplayFrame::amps);
    column(json, "highest_amps", replay, ReplayFrame::highestAmps);
    column(json, "average_amps", replay, ReplayFrame::averageAmps);
    column(json, "volts", replay, ReplayFrame::volts);
    column(json, "highest_volts", replay, ReplayFrame::highestVolts);
    column(json, "average_volts", replay, ReplayFrame::averageVolts);
    json.startArray("signal");
    for (int k = 0; k < replay.frames(); k++) {
      json.item(replay.frame(k).signal().word());
    }
    json.endArray().startArray("spells");
    for (ReplaySpell spell : ReplayStory.of(replay, phrases).spells()) {
      json.startItem().number("from_s", spell.fromSeconds()).text("says", spell.says()).endItem();
    }
    json.endArray();
  }

  private static void column(
      JsonLines json, String name, WeldReplay replay, ToDoubleFunction<ReplayFrame> value)
      throws IOException {
    json.startArray(name);
    for (int k = 0; k < replay.frames(); k++) {
      json.item(value.applyAsDouble(replay.frame(k)));
    }
    json.endArray();
  }

  /**
   * A window of a raw recording.
   *
   * @param shorts null if they cannot be told
   */
  static String of(RawColumns columns, List<ShortSpell> shorts) {
    return text(
        json -> {
          json.start("zoom").number("from_s", columns.window.fromSeconds());
          json.number("to_s", columns.window.untilSeconds());
          json.exact("column_s", columns.columnSeconds());
          json.count("pairs_per_second", columns.window.recording().pairsPerSecond());
          json.truth("single_pairs", columns.areSinglePairs());
          json.countIfMeasured("short_circuits", shorts == null ? -1 : shorts.size());
          column(json, "lowest_amps", columns.lowestAmps);
          column(json, "highest_amps", columns.highestAmps);
          column(json, "lowest_volts", columns.lowestVolts);
          column(json, "highest_volts", columns.highestVolts);
          json.end();
        });
  }

  private static void column(JsonLines json, String name, double[] values) throws IOException {
    json.startArray(name);
    for (double value : values) {
      json.item(value);
    }
    json.endArray();
  }

  private static String text(Writing writing) {
    StringWriter text = new StringWriter();
    try {
      JsonLines json = new JsonLines(text);
      writing.to(json);
      json.flush();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }
}
