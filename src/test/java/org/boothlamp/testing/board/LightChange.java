package org.boothlamp.testing.board;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.lamp.LampPattern;
import org.boothlamp.lamp.RedStyle;

/**
 * The lights became these. Immutable.
 *
 * @param seconds when, on whatever clock the list it stands in has
 * @param lights as {@link PinSample#lights} says it
 */
record LightChange(double seconds, String lights) {

  /** The three pins are written one after the other: what lasts this short is on its way. */
  private static final double ON_ITS_WAY_SECONDS = 0.03;

  private static final LampPattern PATTERN = new LampPattern(RedStyle.STEADY);

  /** Changes that pins made, between two moments; the first is what they were at the start. */
  static List<LightChange> seen(List<PinSample> samples, double from, double to) {
    List<LightChange> changes = new ArrayList<>();
    for (PinSample sample : samples) {
      if (sample.seconds() < to) {
        add(changes, new LightChange(Math.max(from, sample.seconds()), sample.lights()));
      }
    }
    return changes;
  }

  private static void add(List<LightChange> changes, LightChange next) {
    int last = changes.size() - 1;
    if (last >= 0 && changes.get(last).lights.equals(next.lights)) {
      return;
    }
    if (last >= 0 && next.seconds - changes.get(last).seconds < ON_ITS_WAY_SECONDS) {
      changes.remove(last);
      add(changes, next);
      return;
    }
    changes.add(next);
  }

  /**
   * Changes that a lamp's trace asks for.
   *
   * @param rows {@code monotonic_ns,samples_ns,signal}
   */
  static List<LightChange> asked(List<String> rows) {
    List<LightChange> changes = new ArrayList<>();
    for (int k = 1; k < rows.size(); k++) {
      long nextNanos = k + 1 < rows.size() ? nanos(rows.get(k + 1)) : nanos(rows.get(k)) + 1;
      askSignal(changes, rows.get(k), nextNanos);
    }
    return changes;
  }

  private static void askSignal(List<LightChange> changes, String row, long endNanos) {
    Signal signal = signal(row);
    long nanos = nanos(row);
    long elapsed = 0;
    while (elapsed < endNanos - nanos) {
      String lights = words(PATTERN.lights(signal, elapsed));
      if (changes.isEmpty() || !changes.get(changes.size() - 1).lights.equals(lights)) {
        changes.add(new LightChange((nanos + elapsed) / 1e9, lights));
      }
      long rest = PATTERN.nanosToChange(signal, elapsed);
      elapsed = rest == Long.MAX_VALUE ? rest : elapsed + rest;
    }
  }

  private static long nanos(String row) {
    return Long.parseLong(row.substring(0, row.indexOf(',')));
  }

  private static Signal signal(String row) {
    String word = row.substring(row.lastIndexOf(',') + 1);
    for (Signal signal : Signal.values()) {
      if (signal.word().equals(word)) {
        return signal;
      }
    }
    throw new IllegalArgumentException("no such signal in the lamp's trace: " + row);
  }

  private static String words(int lights) {
    int levels =
        ((lights & LampPattern.RED) != 0 ? 1 << PinSample.RED : 0)
            | ((lights & LampPattern.AMBER) != 0 ? 1 << PinSample.AMBER : 0)
            | ((lights & LampPattern.GREEN) != 0 ? 1 << PinSample.GREEN : 0);
    return new PinSample(0, levels, 0).lights();
  }
}
