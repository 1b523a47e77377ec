package org.boothlamp.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * One quantity of a run and of the one beside it in letters: {@code *} the run, {@code o} the other
 * one, {@code @} both, {@code -} the limits, {@code |} now. Nothing is drawn beyond now. Immutable.
 */
final class ReplayChart {

  private static final int LABEL = 8;
  private static final double OUTSIDE_SHARE = 0.6;

  private final SideBySide pair;
  private final ToDoubleFunction<ReplayFrame> value;
  private final Window window;
  private final int columns;
  private final int rows;
  private double low = Double.POSITIVE_INFINITY;
  private double high = Double.NEGATIVE_INFINITY;

  /**
   * A chart of amps or volts.
   *
   * @param width characters, label inside
   * @param rows lines, at least 4
   */
  ReplayChart(SideBySide pair, Quantity quantity, int width, int rows) {
    this.pair = pair;
    this.rows = rows;
    columns = width - LABEL;
    window = pair.one().run().window(quantity);
    boolean amps = quantity == Quantity.AMPS;
    if (pair.one().isAlternating()) {
      value = amps ? ReplayFrame::highestAmps : ReplayFrame::highestVolts;
    } else {
      value = amps ? ReplayFrame::amps : ReplayFrame::volts;
    }
    if (window != null) {
      reach(window.low() - OUTSIDE_SHARE * window.width());
      reach(window.high() + OUTSIDE_SHARE * window.width());
    }
    reachAverages(pair.one(), amps);
    if (pair.beside() != null) {
      reachAverages(pair.beside(), amps);
    }
    if (!(low < high)) {
      low = Double.isInfinite(low) ? 0 : low - 1;
      high = Double.isInfinite(high) ? 1 : high + 1;
    }
  }

  private void reachAverages(WeldReplay replay, boolean amps) {
    ToDoubleFunction<ReplayFrame> average =
        replay.isAlternating()
            ? value
            : amps ? ReplayFrame::averageAmps : ReplayFrame::averageVolts;
    for (int k = 0; k < replay.frames(); k++) {
      reach(average.applyAsDouble(replay.frame(k)));
    }
  }

  private void reach(double value) {
    if (!Double.isNaN(value)) {
      low = Math.max(0, Math.min(low, value));
      high = Math.max(high, value);
    }
  }

  /** The lines of the chart up to a frame, the highest values first. */
  List<String> linesUpTo(int frame) {
    char[][] cells = new char[rows][columns];
    for (char[] row : cells) {
      Arrays.fill(row, ' ');
    }
    drawLimits(cells);
    drawNow(cells, frame);
    if (pair.beside() != null) {
      draw(cells, pair.beside(), frame, 'o');
    }
    draw(cells, pair.one(), frame, '*');
    List<String> lines = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      lines.add(label(row) + new String(cells[row]));
    }
    return lines;
  }

  private void drawLimits(char[][] cells) {
    if (window != null) {
      Arrays.fill(cells[row(window.low())], '-');
      Arrays.fill(cells[row(window.high())], '-');
    }
  }

  private void drawNow(char[][] cells, int frame) {
    int column = column(Math.min(frame, pair.frames() - 1));
    for (char[] row : cells) {
      row[column] = row[column] == ' ' ? '|' : row[column];
    }
  }

  private void draw(char[][] cells, WeldReplay replay, int until, char mark) {
    double[] sums = new double[columns];
    int[] counts = new int[columns];
    for (int k = 0; k <= until && k < replay.frames(); k++) {
      double one = value.applyAsDouble(replay.frame(k));
      if (!Double.isNaN(one)) {
        sums[column(k)] += one;
        counts[column(k)]++;
      }
    }
    for (int column = 0; column < columns; column++) {
      if (counts[column] > 0) {
        char[] row = cells[row(sums[column] / counts[column])];
        row[column] = row[column] == 'o' ? '@' : mark;
      }
    }
  }

  private int column(int frame) {
    return (int) ((long) frame * columns / Math.max(columns, pair.frames()));
  }

  private int row(double at) {
    long row = Math.round((high - at) / (high - low) * (rows - 1));
    return (int) Math.max(0, Math.min(rows - 1, row));
  }

  private String label(int row) {
    double at = high - (high - low) * row / (rows - 1);
    String text = row == 0 || row == rows - 1 ? Numbers.fixed(at, at < 100 ? 1 : 0) : "";
    if (window != null && row == row(window.low())) {
      text = Numbers.plain(window.low());
    }
    if (window != null && row == row(window.high())) {
      text = Numbers.plain(window.high());
    }
    return " ".repeat(Math.max(0, LABEL - 1 - text.length())) + text + " ";
  }

  /** The lamp of a run below the chart: the worst of each column, up to a frame. */
  Signal[] lamp(WeldReplay replay, int until) {
    Signal[] lamp = new Signal[columns];
    Arrays.fill(lamp, Signal.DARK);
    for (int k = 0; k <= until && k < replay.frames(); k++) {
      Signal signal = replay.frame(k).signal();
      int column = column(k);
      lamp[column] = signal.code() > lamp[column].code() ? signal : lamp[column];
    }
    return lamp;
  }
}
