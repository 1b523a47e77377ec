package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * Plays the script of a booth in fine steps and takes a pair of counts at every sampling time.
 *
 * <pre>
 * SimulatedRun -> SimulatedWelder -> SimulatedArc -> SimulatedTruth
 *                  (every tick)     (every step) \-> SimulatedConverter -> pair
 * </pre>
 *
 * Everything is made at the start; playing creates no objects. Confined to one thread.
 */
final class SimulatedPlay {

  /** Longest fine step; the voltage's jumps and the shortest contacts are far longer. */
  static final double LONGEST_STEP_SECONDS = 20e-6;

  /** Time between two looks at hand, trigger and pool. */
  private static final double TICK_SECONDS = 0.0005;

  private static final int TRUTH_PLACES_PER_RUN = 32;
  private static final int MOST_TRUTH_PLACES = 8_192;

  private final SimulatedBooth booth;
  private final SimulatedRunListener listener;
  private final int stepsPerPair;
  private final int stepsPerTick;
  private final SimulatedWelder welder;
  private final SimulatedArc[] arcs;
  private final SimulatedConverter converter;
  private final SimulatedTruth truth;
  private SimulatedArc arc;
  private SimulatedRun run;
  private int runIndex = -1;
  private int stepsToTick;

  SimulatedPlay(
      SimulatedBooth booth,
      SimulatedSensor sensor,
      SimulatedRunListener listener,
      double longestStepSeconds) {
    this.booth = booth;
    this.listener = listener;
    double pairSeconds = 1.0 / sensor.pairsPerSecond();
    // a hair less than the quotient, or rounding makes 11 steps of 10
    stepsPerPair = (int) Math.max(1, Math.ceil(pairSeconds / longestStepSeconds - 1e-6));
    double stepSeconds = pairSeconds / stepsPerPair;
    stepsPerTick = (int) Math.max(1, Math.round(TICK_SECONDS / stepSeconds));
    double tickSeconds = stepsPerTick * stepSeconds;
    SplittableRandom random = new SplittableRandom(booth.seed());
    welder = new SimulatedWelder(tickSeconds, random.split());
    arcs = arcs(tickSeconds, stepSeconds, random);
    arc = arcs[0];
    converter = new SimulatedConverter(sensor, stepSeconds, random.split());
    int places = Math.min(MOST_TRUTH_PLACES, TRUTH_PLACES_PER_RUN * booth.runs().size());
    truth = new SimulatedTruth(stepSeconds, places);
  }

  private static SimulatedArc[] arcs(
      double tickSeconds, double stepSeconds, SplittableRandom random) {
    SimulatedProcess[] processes = SimulatedProcess.values();
    SimulatedArc[] arcs = new SimulatedArc[processes.length];
    for (SimulatedProcess process : processes) {
      SplittableRandom own = random.split();
      arcs[process.ordinal()] =
          switch (process) {
            case STICK -> new SimulatedStickArc(tickSeconds, stepSeconds, own);
            case SHORT_ARC -> new SimulatedWireArc(tickSeconds, stepSeconds, own);
            case TIG -> new SimulatedTigArc(tickSeconds, stepSeconds, own, false);
            case TIG_AC -> new SimulatedTigArc(tickSeconds, stepSeconds, own, true);
          };
    }
    return arcs;
  }

  /** True if the next pair belongs to a new run, or if there is none. */
  boolean isBetweenRuns() {
    return run == null || welder.phase() == SimulatedWelder.Phase.DONE;
  }

  /**
   * Begins the next run and tells the listener.
   *
   * @return false if the script is over
   */
  boolean beginNextRun() {
    if (!booth.endless() && runIndex + 1 >= booth.runs().size()) {
      truth.end();
      return false;
    }
    runIndex++;
    run = booth.runs().get(runIndex % booth.runs().size());
    listener.onRunStarts(runIndex, run);
    welder.begin(run);
    truth.beginRun(runIndex);
    arc = arcs[run.process().ordinal()];
    arc.begin(welder);
    stepsToTick = stepsPerTick;
    return true;
  }

  /** Writes the pair of this moment and goes on to the next one. */
  void nextPair(short[] current, short[] voltage, int index) {
    current[index] = converter.currentCount();
    voltage[index] = converter.voltageCount(arc.volts);
    if (arc.conducts()) {
      stepThrough();
    } else {
      passOver();
    }
  }

  private void stepThrough() {
    for (int k = 0; k < stepsPerPair; k++) {
      stepOnce();
      if (--stepsToTick == 0) {
        tick();
      }
    }
  }

  /** The arc may have gone out at a tick inside the pair; a step then would light it again. */
  private void stepOnce() {
    if (arc.conducts()) {
      arc.step();
      truth.add(arc.amps, arc.volts);
      converter.follow(arc.amps);
    } else {
      truth.pass(1);
      converter.rest(1);
    }
  }

  /** Without current nothing happens between two ticks. */
  private void passOver() {
    truth.pass(stepsPerPair);
    converter.rest(stepsPerPair);
    stepsToTick -= stepsPerPair;
    while (stepsToTick <= 0) {
      tick();
    }
  }

  private void tick() {
    stepsToTick += stepsPerTick;
    welder.tick(arc.conducts());
    truth.moveTo(welder.travelMm());
    arc.tick(welder);
  }

  int runIndex() {
    return runIndex;
  }

  SimulatedTruth truth() {
    return truth;
  }
}
