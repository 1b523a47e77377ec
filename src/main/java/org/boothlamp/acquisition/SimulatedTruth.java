package org.boothlamp.acquisition;

import java.util.ArrayList;
import java.util.List;

/**
 * Collects the truth about every stretch of current, step by step. A fixed number of places is made
 * at the start; when they are used up the oldest stretch gives way. Filled on the sampler's thread;
 * to be read on that thread, or after the source has ended.
 */
public final class SimulatedTruth {

  private static final double ON_AMPS = 15;
  private static final double OFF_AMPS = 9;
  private static final double SHORT_VOLTS = 8;
  private static final double SHORT_SECONDS = 0.0005;
  private static final double BRIDGE_SECONDS = 0.3;
  private static final double ARC_OUT_SECONDS = 0.005;

  /** Sums over steps with current. */
  private static final class Sums {
    long steps;
    long arcSteps;
    double amps;
    double volts;
    double ampsSquared;
    double voltsSquared;
    double watts;

    void clear() {
      steps = 0;
      arcSteps = 0;
      amps = 0;
      volts = 0;
      ampsSquared = 0;
      voltsSquared = 0;
      watts = 0;
    }

    void add(double a, double v, double w) {
      steps++;
      arcSteps += v >= SHORT_VOLTS ? 1 : 0;
      amps += a;
      volts += v;
      ampsSquared += a * a;
      voltsSquared += v * v;
      watts += w;
    }

    void add(Sums other) {
      steps += other.steps;
      arcSteps += other.arcSteps;
      amps += other.amps;
      volts += other.volts;
      ampsSquared += other.ampsSquared;
      voltsSquared += other.voltsSquared;
      watts += other.watts;
    }
  }

  /** One place: what a {@link SimulatedBurn} is made of. */
  private static final class Entry {
    final Sums sums = new Sums();
    int runIndex;
    long firstStep;
    long endStep;
    int shortCircuits;
    int arcOuts;
    double travelMm;
  }

  private final double stepSeconds;
  private final long bridgeSteps;
  private final long arcOutSteps;
  private final int shortSteps;
  private final Entry[] places;
  private long finished;

  /** Steps below the limit, not decided yet whether they belong to the stretch. */
  private final Sums pending = new Sums();

  private Entry open;
  private long step;
  private long lowSteps;
  private int shortRun;
  private int runIndex;
  private double travelMm;
  private double travelAtStartMm;

  SimulatedTruth(double stepSeconds, int capacity) {
    this.stepSeconds = stepSeconds;
    bridgeSteps = Math.round(BRIDGE_SECONDS / stepSeconds);
    arcOutSteps = Math.round(ARC_OUT_SECONDS / stepSeconds);
    shortSteps = (int) Math.max(1, Math.round(SHORT_SECONDS / stepSeconds));
    places = new Entry[capacity];
    for (int i = 0; i < capacity; i++) {
      places[i] = new Entry();
    }
  }

  void beginRun(int index) {
    runIndex = index;
    travelMm = 0;
  }

  /** Where the torch is along the joint from now on. */
  void moveTo(double newTravelMm) {
    travelMm = newTravelMm;
  }

  /** Steps without current. */
  void pass(int steps) {
    step += steps;
    shortRun = 0;
    if (open != null) {
      lowSteps += steps;
      closeWhenOver();
    }
  }

  /** One step with current, signed. */
  void add(double amps, double volts) {
    double a = Math.abs(amps);
    double v = Math.abs(volts);
    if (open == null && a >= ON_AMPS) {
      open();
    }
    if (open != null) {
      if (a >= OFF_AMPS) {
        flow(a, v, amps * volts);
      } else {
        ebb(a, v, amps * volts);
      }
    }
    step++;
  }

  private void open() {
    open = places[(int) (finished % places.length)];
    open.sums.clear();
    open.runIndex = runIndex;
    open.firstStep = step;
    open.shortCircuits = 0;
    open.arcOuts = 0;
    travelAtStartMm = travelMm;
    lowSteps = 0;
    shortRun = 0;
    pending.clear();
  }

  private void flow(double a, double v, double watts) {
    if (lowSteps > 0) {
      bridge();
    }
    open.sums.add(a, v, watts);
    open.endStep = step + 1;
    open.travelMm = travelMm - travelAtStartMm;
    shortRun = v < SHORT_VOLTS ? shortRun + 1 : 0;
    if (shortRun == shortSteps) {
      open.shortCircuits++;
    }
  }

  /** A current on its way through zero belongs to the stretch; an arc-out does not. */
  private void bridge() {
    if (lowSteps > arcOutSteps) {
      open.arcOuts++;
    } else {
      open.sums.add(pending);
    }
    pending.clear();
    lowSteps = 0;
  }

  private void ebb(double a, double v, double watts) {
    lowSteps++;
    shortRun = 0;
    if (lowSteps <= arcOutSteps) {
      pending.add(a, v, watts);
    }
    closeWhenOver();
  }

  private void closeWhenOver() {
    if (lowSteps > bridgeSteps) {
      open = null;
      finished++;
    }
  }

  /** Ends a stretch that the end of the script cut off. */
  void end() {
    if (open != null) {
      open = null;
      finished++;
    }
  }

  /** Finished stretches since the start, those that gave way included. */
  public long finishedCount() {
    return finished;
  }

  /** The finished stretches that are still held, in order of time. */
  public List<SimulatedBurn> burns() {
    List<SimulatedBurn> burns = new ArrayList<>();
    // while a stretch is open it uses the oldest place
    long held = places.length - (open == null ? 0 : 1);
    for (long k = Math.max(0, finished - held); k < finished; k++) {
      burns.add(burn(places[(int) (k % places.length)]));
    }
    return burns;
  }

  private SimulatedBurn burn(Entry entry) {
    Sums sums = entry.sums;
    return new SimulatedBurn(
        entry.runIndex,
        entry.firstStep * stepSeconds,
        entry.endStep * stepSeconds,
        sums.arcSteps * stepSeconds,
        sums.amps / sums.steps,
        sums.volts / sums.steps,
        Math.sqrt(sums.ampsSquared / sums.steps),
        Math.sqrt(sums.voltsSquared / sums.steps),
        sums.watts * stepSeconds,
        sums.steps * stepSeconds,
        entry.shortCircuits,
        entry.arcOuts,
        entry.travelMm);
  }
}
