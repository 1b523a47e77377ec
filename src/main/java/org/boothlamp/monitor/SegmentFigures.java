package org.boothlamp.monitor;

import org.boothlamp.arc.SegmentTally;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.ShortCycles;
import org.boothlamp.signal.Swings;

/**
 * The figures of one segment, running or finished. One object is filled again and again; whoever
 * keeps figures copies them. Confined to one thread.
 *
 * <p>{@code greenSeconds} to {@code faultSeconds} add up to {@code lengthSeconds}. Of the slots at
 * either edge of the arc, means take only the pairs between the first and the last with current.
 */
public final class SegmentFigures {

  /** Start, seconds since the source's first pair. */
  public double startSeconds;

  /** Length from the first to the last slot with current, arc-outs and missing time inside. */
  public double lengthSeconds;

  /** Mean of the absolute current, A. */
  public double meanAmps;

  /** Mean of the absolute voltage, V. */
  public double meanVolts;

  /** RMS current, A. */
  public double rmsAmps;

  /** RMS voltage, V. */
  public double rmsVolts;

  /** Sum of v·i·Δt over arc-on time, J. */
  public double energyJoules;

  /** Mean of the products v·i, W. */
  public double meanWatts;

  /** Kind of current that was measured. */
  public Polarity polarity = Polarity.DC_PLUS;

  /** Short circuits, or -1 if the source is too slow to count them. */
  public long shortCircuits;

  /** The short circuits' cycles; empty if the source is too slow to count them. */
  public final ShortCycles shortCycles = new ShortCycles();

  /** The swings of a pulsed or alternating current; none if the source is too slow for them. */
  public final Swings swings = new Swings();

  /** Interruptions shorter than the bridge. */
  public int arcOuts;

  /** Time judged green, s. */
  public double greenSeconds;

  /** Time judged amber, s. */
  public double amberSeconds;

  /** Time judged red, s. */
  public double redSeconds;

  /** Time not judged, s: before the average is full, or without a procedure. */
  public double settlingSeconds;

  /** Time under a fault, s. */
  public double faultSeconds;

  /** Time inside the segment for which no pair arrived, s. */
  public double missingSeconds;

  /** Takes what follows from the sums of the segment. */
  void takeMeasured(SegmentTally tally, PairScale scale, int pairsPerSecond) {
    PairSums all = tally.all();
    PairSums means = tally.arcOn();
    meanAmps = means.meanAbsoluteAmps(scale);
    meanVolts = means.meanAbsoluteVolts(scale);
    rmsAmps = means.rmsAmps(scale);
    rmsVolts = means.rmsVolts(scale);
    meanWatts = means.meanWatts(scale);
    polarity = Polarity.of(means.meanAmps(scale), meanAmps);
    energyJoules = all.meanWatts(scale) * all.pairs() / pairsPerSecond;
    shortCircuits = ShortCircuitRule.isMeasurableAt(pairsPerSecond) ? all.shortCircuits() : -1;
  }

  /** Takes how long the segment was judged what. */
  void takeJudged(JudgedTime times) {
    greenSeconds = times.seconds(Signal.GREEN);
    amberSeconds = times.seconds(Signal.AMBER);
    redSeconds = times.seconds(Signal.RED);
    settlingSeconds = times.seconds(Signal.SETTLING);
    faultSeconds = times.seconds(Signal.FAULT);
  }

  /** Becomes a copy of {@code other}. */
  public void set(SegmentFigures other) {
    startSeconds = other.startSeconds;
    lengthSeconds = other.lengthSeconds;
    meanAmps = other.meanAmps;
    meanVolts = other.meanVolts;
    rmsAmps = other.rmsAmps;
    rmsVolts = other.rmsVolts;
    energyJoules = other.energyJoules;
    meanWatts = other.meanWatts;
    polarity = other.polarity;
    shortCircuits = other.shortCircuits;
    shortCycles.set(other.shortCycles);
    swings.set(other.swings);
    arcOuts = other.arcOuts;
    greenSeconds = other.greenSeconds;
    amberSeconds = other.amberSeconds;
    redSeconds = other.redSeconds;
    settlingSeconds = other.settlingSeconds;
    faultSeconds = other.faultSeconds;
    missingSeconds = other.missingSeconds;
  }
}
