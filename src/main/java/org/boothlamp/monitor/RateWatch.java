package org.boothlamp.monitor;

/**
 * Holds the index of the pairs against the clock: whether they come at the rate the source says,
 * and whether its clock runs away. Where pairs do not come in real time the block's time is counted
 * from them, and nothing is ever found. Nothing is created after construction. Confined to one
 * thread.
 *
 * <p>Small deviations take long by nature. A block is late by chance, up to 16 ms on a USB-serial
 * line, so over a time T no deviation below that chance / T can be told. From the onset of a
 * deviation it takes:
 *
 * <table>
 *   <caption>Time to detection</caption>
 *   <tr><th>deviation</th><th>found after at most</th><th>as</th></tr>
 *   <tr><td>over 5 %</td><td>0.5 s</td><td>sample rate</td></tr>
 *   <tr><td>over 2 %</td><td>2.2 s</td><td>clock drift</td></tr>
 *   <tr><td>over 1 %</td><td>9 s</td><td>clock drift</td></tr>
 *   <tr><td>over 0.5 %</td><td>33 s</td><td>clock drift</td></tr>
 *   <tr><td>less</td><td>never</td><td></td></tr>
 * </table>
 *
 * <p>This holds where pairs come every 18 ms or more often. Where they come in longer bursts, their
 * lateness may vary by as much as a burst takes, and a deviation is found once it has moved the
 * lateness by more than that: in bursts of 100 ms, 6 % take 2 s.
 */
public final class RateWatch {

  /**
   * More than this share off, and times, energy and short circuits a second are wrong at once. The
   * least that half a second can tell from chance.
   */
  public static final double MOST_RATE_SHARE = 0.05;

  /** An oscillator without a crystal is right to about this share; from memory. */
  public static final double MOST_DRIFT_SHARE = 0.005;

  /** How long it takes to tell the smallest drift. */
  public static final int LONGEST_SECONDS = 33;

  /** After such a break the source may have begun to count anew. */
  private static final long BREAK_NANOS = 250_000_000L;

  private static final int TOGETHER_FACTOR = 4;

  private static final long CLEAR_NANOS = 500_000_000L;

  /** What was found is over a little below the limit, or it would flicker. */
  private static final double BACK_SHARE = 0.8;

  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  private final int pairsPerSecond;
  private final LatenessWindow shortest = new LatenessWindow(450_000_000L, MOST_RATE_SHARE);

  /** The shortest first. */
  private final LatenessWindow[] windows = {
    shortest,
    new LatenessWindow(2_000_000_000L, 0.02),
    new LatenessWindow(8_000_000_000L, 0.01),
    new LatenessWindow(30_000_000_000L, MOST_DRIFT_SHARE)
  };

  private boolean begun;
  private long baseNanos;
  private long baseIndex;
  private long lastNanos;
  private long burstNanos;
  private boolean wrongRate;
  private boolean drifting;
  private long wrongNanos;
  private long notSoundNanos;
  private double tellableShare = Double.NaN;
  private long sinceNanos;
  private long sinceIndex;

  /** A watch over a source that says it gives so many pairs a second. */
  public RateWatch(int pairsPerSecond) {
    this.pairsPerSecond = pairsPerSecond;
  }

  /** Takes a block with pairs. */
  public void accept(SampleBlock block) {
    long now = block.monotonicNanos;
    long endIndex = block.firstIndex + block.count;
    if (!begun) {
      begun = true;
      baseNanos = now;
      baseIndex = endIndex;
    }
    follow(now - lastNanos, nanosOf(block.count));
    lastNanos = now;
    long lateNanos = now - baseNanos - nanosOf(endIndex - baseIndex);
    boolean looked = false;
    for (LatenessWindow window : windows) {
      looked |= window.add(lateNanos, now, endIndex, burstNanos);
    }
    if (looked) {
      decide(now);
    }
  }

  /**
   * Blocks that come much faster than they took belong together. After a break the short window
   * begins anew, and what was found stays so until it is full: a break is no cure.
   */
  private void follow(long sinceLastNanos, long blockNanos) {
    boolean together = TOGETHER_FACTOR * sinceLastNanos < blockNanos;
    burstNanos = Math.min(BREAK_NANOS, together ? burstNanos + blockNanos : blockNanos);
    if (sinceLastNanos >= BREAK_NANOS) {
      shortest.clear();
    }
  }

  /** Split in seconds and rest, or the product would overflow. */
  private long nanosOf(long pairs) {
    return pairs / pairsPerSecond * NANOS_PER_SECOND
        + pairs % pairsPerSecond * NANOS_PER_SECOND / pairsPerSecond;
  }

  private void decide(long now) {
    noteTellable();
    notSoundNanos = shortest.isSound() ? notSoundNanos : now;
    LatenessWindow steep = firstSeen(wrongRate ? BACK_SHARE * MOST_RATE_SHARE : MOST_RATE_SHARE);
    if (steep != null) {
      wrongNanos = now;
    }
    if (wrongRate) {
      endWrongRate(now);
    } else if (steep != null) {
      wrongRate = true;
      drifting = false;
      takeOnset(steep);
      return;
    }
    LatenessWindow seen = wrongRate ? null : firstSeen(0);
    if (seen != null && !drifting) {
      takeOnset(seen);
    }
    drifting = seen != null;
  }

  /** The longer windows still have the wrong rate in them when the shortest is sound again. */
  private void endWrongRate(long now) {
    if (now - notSoundNanos >= CLEAR_NANOS) {
      wrongRate = false;
      for (LatenessWindow window : windows) {
        window.forget();
      }
    } else if (now - wrongNanos >= CLEAR_NANOS) {
      wrongRate = false;
    }
  }

  private LatenessWindow firstSeen(double beyondShare) {
    for (LatenessWindow window : windows) {
      if (window.isSeen() && Math.abs(window.share()) > beyondShare) {
        return window;
      }
    }
    return null;
  }

  private void takeOnset(LatenessWindow window) {
    sinceNanos = window.sinceNanos();
    sinceIndex = window.sinceIndex();
  }

  private void noteTellable() {
    for (LatenessWindow window : windows) {
      if (window.isSound() && !(window.limitShare() >= tellableShare)) {
        tellableShare = window.limitShare();
      }
    }
  }

  /** True while pairs come more than 5 % faster or slower than the source says. */
  public boolean isWrongRate() {
    return wrongRate;
  }

  /** True while the source's clock is off by more than 0.5 %, and the rate is not wrong. */
  public boolean isDrifting() {
    return drifting;
  }

  /**
   * The smallest deviation that could have been told so far, as a share of one; not a number as
   * long as none could.
   */
  public double tellableShare() {
    return tellableShare;
  }

  /** When the fault that is or was active last began, at the earliest; monotonic. */
  long sinceNanos() {
    return sinceNanos;
  }

  /** Index of the pair after the last one before that moment. */
  long sinceIndex() {
    return sinceIndex;
  }
}
