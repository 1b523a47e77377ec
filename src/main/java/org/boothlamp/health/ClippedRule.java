package org.boothlamp.health;

import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Slot;

/** Counts at the end of the converter's range, in either channel. Confined to one thread. */
final class ClippedRule {

  /** As long as the lamp's own step, so that a clipped average is known when it is judged. */
  static final int WINDOW_SLOTS = Slot.PER_SECOND / 10;

  /**
   * Share of the pairs from which the mean suffers; a high-frequency start touches the limit with
   * fewer. Common practice, no source.
   */
  static final double SHARE = 0.05;

  /** A limit closer to zero than this share of the range is where a quiet channel rests. */
  private static final double REST_SHARE = 0.02;

  private static final int NO_LIMIT = 1 << 20;

  final FaultState fault = new FaultState(1);
  private final Channel current;
  private final Channel voltage;
  private final int[] pairs = new int[WINDOW_SLOTS];
  private final long[] slots = new long[WINDOW_SLOTS];
  private int pairsInWindow;
  private int next;

  /** Pairs of one channel at its limits, over the window. */
  private static final class Channel {
    private final int low;
    private final int high;
    private final int[] ring = new int[WINDOW_SLOTS];
    private int total;

    Channel(ChannelScale scale, int lowestCount, int highestCount) {
      double rest = REST_SHARE * (highestCount - lowestCount);
      low = scale.zeroCount() - lowestCount < rest ? -NO_LIMIT : lowestCount;
      high = highestCount - scale.zeroCount() < rest ? NO_LIMIT : highestCount;
    }

    void put(int place, int count) {
      total += count - ring[place];
      ring[place] = count;
    }
  }

  ClippedRule(PairScale scale, int lowestCount, int highestCount) {
    current = new Channel(scale.current(), lowestCount, highestCount);
    voltage = new Channel(scale.voltage(), lowestCount, highestCount);
  }

  void accept(Reading reading) {
    Slot slot = reading.slot;
    current.put(next, slot.currentPairsAtLimit(current.low, current.high));
    voltage.put(next, slot.voltagePairsAtLimit(voltage.low, voltage.high));
    pairsInWindow += (int) reading.sums.pairs() - pairs[next];
    pairs[next] = (int) reading.sums.pairs();
    slots[next] = reading.number;
    next = next + 1 == WINDOW_SLOTS ? 0 : next + 1;
    double limit = SHARE * pairsInWindow;
    boolean seen = current.total > 0 && current.total >= limit;
    seen |= voltage.total > 0 && voltage.total >= limit;
    fault.look(seen, fault.isActive() ? reading.number : firstClipped(seen), reading.number);
  }

  private long firstClipped(boolean seen) {
    int place = next;
    for (int k = 0; seen && k < WINDOW_SLOTS; k++) {
      if (current.ring[place] + voltage.ring[place] > 0) {
        return slots[place];
      }
      place = place + 1 == WINDOW_SLOTS ? 0 : place + 1;
    }
    return slots[place];
  }

  boolean isCurrentAtLimit() {
    return current.total > 0;
  }

  boolean isVoltageAtLimit() {
    return voltage.total > 0;
  }
}
