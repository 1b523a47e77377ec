package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.LongPredicate;

/**
 * Sensor faults put into pairs that were sound: pure functions on counts. A fault reaches from one
 * pair to another, or to the end.
 */
public final class FaultInjector {

  private FaultInjector() {}

  /** Every count times {@code gain}, cut off at the ends of 16 bits. */
  public static short[] amplified(short[] counts, double gain) {
    short[] result = new short[counts.length];
    for (int k = 0; k < counts.length; k++) {
      result[k] = clip(counts[k] * gain);
    }
    return result;
  }

  /** The channel reads its share of what it should, and so many counts of Gaussian noise. */
  public static short[] faded(short[] counts, int from, double share, double noiseCounts) {
    Random random = new Random(from);
    short[] result = counts.clone();
    for (int k = from; k < result.length; k++) {
      result[k] = clip(share * counts[k] + noiseCounts * random.nextGaussian());
    }
    return result;
  }

  /** The channel stands at its count of that moment. */
  public static short[] frozen(short[] counts, int from, int until) {
    return stuck(counts, from, until, counts[from]);
  }

  /** The channel stands at a count. */
  public static short[] stuck(short[] counts, int from, int until, int at) {
    short[] result = counts.clone();
    Arrays.fill(result, from, Math.min(until, result.length), (short) at);
    return result;
  }

  /** The channel is turned round where {@code where} says so of an index. */
  public static short[] turned(short[] counts, LongPredicate where) {
    short[] result = counts.clone();
    for (int k = 0; k < result.length; k++) {
      result[k] = where.test(k) ? clip(-counts[k]) : counts[k];
    }
    return result;
  }

  /** So many counts more at each pair, as a function of the pairs since {@code from}. */
  public static short[] added(short[] counts, int from, DoubleUnaryOperator counted) {
    short[] result = counts.clone();
    for (int k = from; k < result.length; k++) {
      result[k] = clip(counts[k] + counted.applyAsDouble(k - from));
    }
    return result;
  }

  /** Gaussian noise of this standard deviation in counts. */
  public static short[] noisy(short[] counts, int from, double noiseCounts) {
    Random random = new Random(from);
    return added(counts, from, k -> noiseCounts * random.nextGaussian());
  }

  /** What is left if the pairs that {@code lost} names never arrive. */
  public static List<PairScript.Part> without(
      short[] current, short[] voltage, LongPredicate lost) {
    List<PairScript.Part> parts = new ArrayList<>();
    int from = 0;
    for (int k = 0; k <= current.length; k++) {
      if (k == current.length || lost.test(k)) {
        if (k > from) {
          short[] amps = Arrays.copyOfRange(current, from, k);
          parts.add(new PairScript.Part(from, amps, Arrays.copyOfRange(voltage, from, k)));
        }
        from = k + 1;
      }
    }
    return parts;
  }

  private static short clip(double count) {
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(count)));
  }
}
