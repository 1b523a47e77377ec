package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.List;

/** A window of a raw recording as text for people, or as JSON lines for programs. */
public final class ZoomText {

  private static final int LABEL = 8;
  private static final int ROWS = 9;
  private static final int MOST_SHORTS = 12;

  /** Most columns in JSON. */
  public static final int MOST_COLUMNS = 2_000;

  private ZoomText() {}

  /** Columns that fit in a line. */
  public static int columns(int width) {
    return width - LABEL;
  }

  /**
   * Volts and amps from their lowest to their highest, then each short circuit.
   *
   * @param shorts null if they cannot be told
   */
  public static String render(RawColumns columns, List<ShortSpell> shorts, int width) {
    TextPage page = new TextPage(width, Colour.PLAIN);
    RawWindow window = columns.window;
    page.wrapped(
        "",
        2,
        seconds(window.fromSeconds())
            + " to "
            + seconds(window.untilSeconds())
            + " s of the run, "
            + window.recording().pairsPerSecond()
            + " pairs a second; "
            + (columns.areSinglePairs() ? "a column is one pair" : "a column is ")
            + (columns.areSinglePairs()
                ? ""
                : Numbers.fixed(1_000 * columns.columnSeconds(), 2) + Numbers.GLUE + "ms"));
    appendChart(page, "V", columns.lowestVolts, columns.highestVolts);
    appendChart(page, "A", columns.lowestAmps, columns.highestAmps);
    appendShorts(page, shorts);
    return page.toString();
  }

  private static String seconds(double seconds) {
    return Numbers.fixed(seconds, 3);
  }

  private static void appendChart(TextPage page, String unit, double[] low, double[] high) {
    double most = Arrays.stream(high).filter(value -> !Double.isNaN(value)).max().orElse(1);
    double least = Arrays.stream(low).filter(value -> !Double.isNaN(value)).min().orElse(0);
    double bottom = Math.min(0, least);
    double top = Math.max(most, bottom + 1);
    for (int row = 0; row < ROWS; row++) {
      boolean edge = row == 0 || row == ROWS - 1;
      double at = top - (top - bottom) * row / (ROWS - 1);
      page.text(row == 0 ? unit : " ");
      page.right(edge ? Numbers.fixed(at, 1) : "", LABEL - 2).text(" ");
      for (int k = 0; k < low.length; k++) {
        boolean holds = row(low[k], bottom, top) >= row && row(high[k], bottom, top) <= row;
        page.text(!Double.isNaN(low[k]) && holds ? "#" : " ");
      }
      page.newLine();
    }
  }

  private static long row(double value, double bottom, double top) {
    return Math.round((top - value) / (top - bottom) * (ROWS - 1));
  }

  private static void appendShorts(TextPage page, List<ShortSpell> shorts) {
    if (shorts == null) {
      page.line("short circuits: not measured, the recording is too slow for them");
      return;
    }
    page.line(Numbers.counted(shorts.size(), "short circuit", "short circuits"));
    for (ShortSpell one : shorts.subList(0, Math.min(MOST_SHORTS, shorts.size()))) {
      page.right(Numbers.fixed(one.startSeconds(), 3), 10).text(" s");
      page.right(Numbers.fixed(1_000 * one.lengthSeconds(), 1), 8).line(" ms");
    }
    if (shorts.size() > MOST_SHORTS) {
      page.line("  and " + (shorts.size() - MOST_SHORTS) + " more: --format json has them all");
    }
  }

  /**
   * One {@code zoom}, then a {@code column} each, then a {@code short_circuit} each.
   *
   * @param shorts null if they cannot be told
   * @throws IOException if the writer does
   */
  public static void writeJson(RawColumns columns, List<ShortSpell> shorts, Writer writer)
      throws IOException {
    JsonLines lines = new JsonLines(writer);
    RawWindow window = columns.window;
    lines.start("zoom").number("from_s", window.fromSeconds());
    lines.number("to_s", window.untilSeconds());
    lines.count("pairs_per_second", window.recording().pairsPerSecond());
    lines.count("columns", columns.size()).exact("column_s", columns.columnSeconds());
    lines.countIfMeasured("short_circuits", shorts == null ? -1 : shorts.size()).end();
    for (int k = 0; k < columns.size(); k++) {
      lines.start("column").number("t_s", window.fromSeconds() + k * columns.columnSeconds());
      lines.number("lowest_amps", columns.lowestAmps[k]);
      lines.number("highest_amps", columns.highestAmps[k]);
      lines.number("lowest_volts", columns.lowestVolts[k]);
      lines.number("highest_volts", columns.highestVolts[k]).end();
    }
    for (ShortSpell one : shorts == null ? List.<ShortSpell>of() : shorts) {
      lines.start("short_circuit").number("start_s", one.startSeconds());
      lines.number("length_s", one.lengthSeconds()).end();
    }
    lines.flush();
  }
}
