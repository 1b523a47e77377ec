package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.SlotBuilder;
import org.boothlamp.signal.SlotListener;

/**
 * Sample pairs written down as a story: idle, arc, off, gap. Lengths are seconds. Its scales are
 * powers of two, so that whole and half amps and volts are counts without a rest.
 *
 * <p>Channels that stand still to the count are a fault, so every fifth of a second of a steady
 * piece has four pairs that are one count off; they leave all means as they are.
 */
public final class PairScript {

  /** 1/16 A and 1/128 V per count, zero at count 0. */
  public static final PairScale SCALE =
      new PairScale(new ChannelScale(1.0 / 16, 0), new ChannelScale(1.0 / 128, 0));

  /** Volts of the machine while no current flows. */
  public static final double OPEN_CIRCUIT_VOLTS = 70;

  /** Pairs without a gap; the first has this index. */
  public record Part(long firstIndex, short[] current, short[] voltage) {}

  private final int pairsPerSecond;
  private final PairScale scale;
  private final List<Part> parts = new ArrayList<>();
  private short[] current = new short[1_024];
  private short[] voltage = new short[1_024];
  private int held;
  private long firstIndex;

  private PairScript(int pairsPerSecond, PairScale scale) {
    this.pairsPerSecond = pairsPerSecond;
    this.scale = scale;
  }

  /** A script that begins at pair 0, in {@link #SCALE}. */
  public static PairScript at(int pairsPerSecond) {
    return new PairScript(pairsPerSecond, SCALE);
  }

  /** A script that begins at pair 0, in another scale. */
  public static PairScript at(int pairsPerSecond, PairScale scale) {
    return new PairScript(pairsPerSecond, scale);
  }

  /** No current, open-circuit volts. */
  public PairScript idle(double seconds) {
    return arc(0, OPEN_CIRCUIT_VOLTS, seconds);
  }

  /** The arc is out for a while; the same as {@link #idle}, said inside a segment. */
  public PairScript off(double seconds) {
    return idle(seconds);
  }

  /** Steady amps and volts. */
  public PairScript arc(double amps, double volts, double seconds) {
    int pairs = pairs(seconds);
    for (int k = 0; k < pairs; k++) {
      add(
          scale.current().toCount(amps) + offCount(0),
          scale.voltage().toCount(volts) + offCount(2));
    }
    return this;
  }

  /** One count up and one down, in the slot at 0.15 s, 0.35 s … */
  private int offCount(int firstPair) {
    long place = (firstIndex + held - 3L * pairsPerSecond / 20) % (pairsPerSecond / 5);
    return place == firstPair ? 1 : place == firstPair + 1 ? -1 : 0;
  }

  /** Amps and volts that stand still to the count, as of a channel that is frozen. */
  public PairScript frozen(double amps, double volts, double seconds) {
    return wave(t -> amps, t -> volts, seconds);
  }

  /** Alternating amps and volts, rectangular. */
  public PairScript square(double amps, double volts, double hertz, double seconds) {
    return wave(t -> amps * flank(hertz * t), t -> volts * flank(hertz * t), seconds);
  }

  private static int flank(double cycles) {
    return cycles - Math.floor(cycles) < 0.5 ? 1 : -1;
  }

  /** Alternating amps as a sine of this peak; the volts of an arc are rectangular with it. */
  public PairScript sine(double peakAmps, double volts, double hertz, double seconds) {
    return wave(
        t -> peakAmps * Math.sin(2 * Math.PI * hertz * t), t -> volts * flank(hertz * t), seconds);
  }

  /** Amps and volts as functions of the seconds since the start of this piece. */
  public PairScript wave(DoubleUnaryOperator amps, DoubleUnaryOperator volts, double seconds) {
    int pairs = pairs(seconds);
    for (int k = 0; k < pairs; k++) {
      double t = (double) k / pairsPerSecond;
      add(
          scale.current().toCount(amps.applyAsDouble(t)),
          scale.voltage().toCount(volts.applyAsDouble(t)));
    }
    return this;
  }

  private void add(double currentCount, double voltageCount) {
    if (held == current.length) {
      current = Arrays.copyOf(current, 2 * held);
      voltage = Arrays.copyOf(voltage, 2 * held);
    }
    current[held] = count(currentCount);
    voltage[held] = count(voltageCount);
    held++;
  }

  private static short count(double exact) {
    long count = Math.round(exact);
    if (count != (short) count) {
      throw new IllegalArgumentException("does not fit a 16-bit converter: count=" + count);
    }
    return (short) count;
  }

  /** Pairs that never arrive. */
  public PairScript gap(double seconds) {
    closePart();
    firstIndex += pairs(seconds);
    return this;
  }

  private int pairs(double seconds) {
    return (int) Math.round(seconds * pairsPerSecond);
  }

  private void closePart() {
    if (held > 0) {
      parts.add(new Part(firstIndex, Arrays.copyOf(current, held), Arrays.copyOf(voltage, held)));
      firstIndex += held;
      held = 0;
    }
  }

  /** Everything so far, cut at the gaps. */
  public List<Part> parts() {
    closePart();
    return List.copyOf(parts);
  }

  /** Sends everything through a slot builder with the standard thresholds. */
  public void sendTo(SlotListener listener) {
    ShortCircuitRule rule = new ShortCircuitRule(8, 9);
    SlotBuilder builder = new SlotBuilder(pairsPerSecond, scale, rule, listener);
    for (Part part : parts()) {
      builder.accept(part.current(), part.voltage(), part.current().length, part.firstIndex());
    }
  }

  /** Copies of the sums of every complete slot. */
  public List<PairSums> slots() {
    List<PairSums> slots = new ArrayList<>();
    sendTo(
        slot -> {
          PairSums copy = new PairSums();
          copy.set(slot.sums());
          slots.add(copy);
        });
    return slots;
  }

  /** Sums over all complete slots. */
  public PairSums total() {
    PairSums total = new PairSums();
    slots().forEach(total::add);
    return total;
  }

  /** Sends everything through a pipeline. */
  public void sendTo(PipelineRun run) {
    for (Part part : parts()) {
      run.send(part.current(), part.voltage(), part.firstIndex());
    }
  }

  /** Pairs per second. */
  public int pairsPerSecond() {
    return pairsPerSecond;
  }

  /** Counts to amps and volts. */
  public PairScale scale() {
    return scale;
  }
}
