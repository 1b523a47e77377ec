package org.boothlamp.calibration;

/**
 * The last {@link #SECONDS} seconds of one channel's counts, and of a reference meter's readings
 * over the same time: a ring of slots of 0.1 s, reduced to sums. A reading of the meter belongs to
 * the slot that is being filled when it arrives, so both means cover the same time whatever clock
 * the source runs by.
 *
 * <p>Missing pairs are missing time: the window begins anew after them. Creates no objects while it
 * is filled. Confined to one thread.
 */
public final class AveragingWindow {

  /** After EN 50504:2008, ten seconds of stability, as an instruction sheet extracts it. */
  public static final double SECONDS = 10;

  private static final int SLOTS = 100;
  private static final int SLOTS_PER_SECOND = 10;

  /** What arrives in the window's first half second was begun before it. */
  private static final int SLOTS_WITHOUT_REFERENCE = 5;

  /** Sums of 0.1 s; the meter's readings, if any, beside them. */
  private static final class Slot {
    long readings;
    long sum;
    long sumOfSquares;
    long clipped;
    long references;
    double referenceSum;
    double referenceSquares;

    void clear() {
      readings = 0;
      sum = 0;
      sumOfSquares = 0;
      clipped = 0;
      references = 0;
      referenceSum = 0;
      referenceSquares = 0;
    }
  }

  private final int slotReadings;
  private final int lowestCount;
  private final int highestCount;
  private final Slot[] ring = new Slot[SLOTS];
  private Slot filling = new Slot();
  private int held;
  private int oldest;
  private long nextIndex = -1;
  private long gaps;

  /**
   * An empty window.
   *
   * @param pairsPerSecond rate of the counts, at least 10
   * @param lowestCount a count at it is clipped
   * @param highestCount likewise
   */
  public AveragingWindow(int pairsPerSecond, int lowestCount, int highestCount) {
    if (pairsPerSecond < SLOTS_PER_SECOND) {
      throw new IllegalArgumentException(
          "a slot of 0.1 s needs a reading: pairsPerSecond=" + pairsPerSecond);
    }
    this.slotReadings = pairsPerSecond / SLOTS_PER_SECOND;
    this.lowestCount = lowestCount;
    this.highestCount = highestCount;
    for (int i = 0; i < SLOTS; i++) {
      ring[i] = new Slot();
    }
  }

  /**
   * Adds counts in order.
   *
   * @param firstIndex index of the first since the source's start; a jump is a gap
   */
  public void accept(short[] counts, int count, long firstIndex) {
    if (nextIndex >= 0 && firstIndex != nextIndex) {
      gaps++;
      clear();
    }
    nextIndex = firstIndex + count;
    for (int i = 0; i < count; i++) {
      add(counts[i]);
    }
  }

  private void add(int count) {
    filling.readings++;
    filling.sum += count;
    filling.sumOfSquares += (long) count * count;
    if (count <= lowestCount || count >= highestCount) {
      filling.clipped++;
    }
    if (filling.readings == slotReadings) {
      push();
    }
  }

  /** The full slot goes into the ring, and the oldest, or an empty one, is filled next. */
  private void push() {
    int place = (oldest + held) % SLOTS;
    Slot free = ring[place];
    ring[place] = filling;
    if (held == SLOTS) {
      oldest = (oldest + 1) % SLOTS;
    } else {
      held++;
    }
    free.clear();
    filling = free;
  }

  /** A reading of the reference meter arrived; finite. */
  public void acceptReference(double reading) {
    filling.references++;
    filling.referenceSum += reading;
    filling.referenceSquares += reading * reading;
  }

  /** Forgets everything: another level is set. */
  public void clear() {
    held = 0;
    oldest = 0;
    filling.clear();
  }

  /** Times it began anew because pairs were missing. */
  public long gaps() {
    return gaps;
  }

  /** What the whole slots held say. */
  public WindowFigures figures() {
    Total whole = new Total(0, held);
    double spread = whole.standardDeviation();
    return new WindowFigures(
        (double) held / SLOTS_PER_SECOND,
        held == SLOTS,
        whole.readings,
        whole.mean(),
        spread,
        new Total(0, held / 2).standardDeviation(),
        new Total(held / 2, held).standardDeviation(),
        slope() * held,
        driftStandardError(),
        whole.clipped,
        new Total(Math.min(SLOTS_WITHOUT_REFERENCE, held), held).reference());
  }

  private Slot slot(int age) {
    return ring[(oldest + age) % SLOTS];
  }

  private double slotMean(int age) {
    return (double) slot(age).sum / slotReadings;
  }

  /** Least squares through the slots' means, counts per slot; 0 for less than three slots. */
  private double slope() {
    if (held < 3) {
      return 0;
    }
    double weighted = 0;
    for (int age = 0; age < held; age++) {
      weighted += (age - middle()) * slotMean(age);
    }
    return weighted / spreadOfAges();
  }

  private double middle() {
    return (held - 1) / 2.0;
  }

  /** Sum of squares of the ages about their middle. */
  private double spreadOfAges() {
    return held * ((double) held * held - 1) / 12;
  }

  /**
   * From the scatter of the slots' means about the line, not of single readings: ripple of the load
   * that is slower than a slot counts as what it is.
   */
  private double driftStandardError() {
    if (held < 3) {
      return Double.NaN;
    }
    double mean = new Total(0, held).mean();
    double slope = slope();
    double squares = 0;
    for (int age = 0; age < held; age++) {
      double residual = slotMean(age) - mean - slope * (age - middle());
      squares += residual * residual;
    }
    return held * Math.sqrt(squares / (held - 2) / spreadOfAges());
  }

  /** Sums over a span of slots. */
  private final class Total {
    private long readings;
    private double sum;
    private double sumOfSquares;
    private long clipped;
    private long references;
    private double referenceSum;
    private double referenceSquares;

    Total(int fromAge, int untilAge) {
      for (int age = fromAge; age < untilAge; age++) {
        Slot slot = slot(age);
        readings += slot.readings;
        sum += slot.sum;
        sumOfSquares += slot.sumOfSquares;
        clipped += slot.clipped;
        references += slot.references;
        referenceSum += slot.referenceSum;
        referenceSquares += slot.referenceSquares;
      }
    }

    double mean() {
      return sum / readings;
    }

    double standardDeviation() {
      return deviation(readings, sum, sumOfSquares);
    }

    ReferenceFigures reference() {
      return new ReferenceFigures(
          references,
          referenceSum / references,
          deviation(references, referenceSum, referenceSquares));
    }

    private static double deviation(long count, double sum, double squares) {
      return count < 2
          ? Double.NaN
          : Math.sqrt(Math.max(0, squares - sum * sum / count) / (count - 1));
    }
  }
}
