package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * TIG on a steeply drooping source: high-frequency ignition, up-slope, crater fill; direct current
 * with the electrode negative, or square-wave alternating current. Confined to one thread.
 */
final class SimulatedTigArc extends SimulatedArc {

  private enum State {
    OPEN,
    IGNITING,
    ARC
  }

  private static final double OPEN_VOLTS = 70;
  private static final double DROOP_EXPONENT = 2;

  /** Volts at which the machine's scale is marked: 10 + 0.04 I after IEC 60974-1, about. */
  private static final double SCALE_VOLTS = 12;

  private static final double DC_INDUCTANCE_HENRY = 0.0005;
  private static final double AC_INDUCTANCE_HENRY = 0.0001;

  /** Not in step with any usual sampling rate, as a machine never is. */
  private static final double AC_PERIOD_SECONDS = 1.0 / 97;

  /** Share of the period in which the electrode is negative; common practice, no source. */
  private static final double AC_BALANCE = 0.7;

  /** An aluminium cathode takes more than hot tungsten; from memory. */
  private static final double AC_POSITIVE_VOLTS = 3;

  private static final double FALL_VOLTS = 7.7;
  private static final double FALL_OHMS = 0.015;
  private static final double GRADIENT_VOLTS_PER_MM = 0.95;

  /** Below this the arc of alternating current is a plain resistance on its way through zero. */
  private static final double THROUGH_ZERO_AMPS = 4;

  private static final double RIGHT_GAP_MM = 3;
  private static final double AWAY_MM = 15;
  private static final double LONGEST_ARC_MM = 11;
  private static final double STEADY_MM_PER_S = 60;
  private static final double SWING_MM_PER_S = 400;
  private static final double IGNITION_SECONDS = 0.03;
  private static final double IGNITION_VOLTS = 15;
  private static final double IGNITION_AMPS = 5;
  private static final double START_SHARE = 0.3;
  private static final double END_SHARE = 0.15;
  private static final double UP_SLOPE_SECONDS = 0.5;
  private static final double CRATER_FILL_SECONDS = 1.5;
  private static final double ROOT_VOLTS = 0.12;
  private static final double ROOT_MEMORY_SECONDS = 0.005;

  private final SimulatedDroop droop = new SimulatedDroop(OPEN_VOLTS, DROOP_EXPONENT);
  private final SimulatedWander root;
  private final boolean alternating;
  private final double inductanceHenry;
  private State state = State.OPEN;
  private double setShortAmps;
  private double shortAmps;
  private double gapMm;
  private double rootVolts;
  private double ignitionSeconds;
  private double commandShare;
  private double halfWaveSeconds;
  private int sign = -1;

  SimulatedTigArc(
      double tickSeconds, double stepSeconds, SplittableRandom random, boolean alternating) {
    super(tickSeconds, stepSeconds, random);
    this.alternating = alternating;
    inductanceHenry = alternating ? AC_INDUCTANCE_HENRY : DC_INDUCTANCE_HENRY;
    root = new SimulatedWander(tickSeconds, ROOT_MEMORY_SECONDS);
  }

  @Override
  void begin(SimulatedWelder welder) {
    setShortAmps = welder.setAmps() / droop.shareAt(SCALE_VOLTS);
    gapMm = RIGHT_GAP_MM;
    open();
  }

  @Override
  boolean conducts() {
    return state == State.ARC;
  }

  @Override
  void tick(SimulatedWelder welder) {
    SimulatedWelder.Phase phase = welder.phase();
    boolean wanted =
        phase == SimulatedWelder.Phase.HOLDING || phase == SimulatedWelder.Phase.TOUCHING;
    rootVolts = ROOT_VOLTS * root.next(random);
    switch (state) {
      case OPEN -> igniteWhen(wanted);
      case IGNITING -> lightWhen(wanted);
      case ARC -> hold(welder, wanted);
    }
  }

  private void igniteWhen(boolean wanted) {
    if (wanted) {
      state = State.IGNITING;
      ignitionSeconds = 0;
      gapMm = RIGHT_GAP_MM;
    }
  }

  /** What a voltage lead picks up of the high frequency looks like coarse noise. */
  private void lightWhen(boolean wanted) {
    ignitionSeconds += tickSeconds;
    volts = -OPEN_VOLTS + IGNITION_VOLTS * random.nextGaussian();
    if (!wanted) {
      open();
    } else if (ignitionSeconds > IGNITION_SECONDS) {
      state = State.ARC;
      sign = -1;
      halfWaveSeconds = 0;
      commandShare = START_SHARE;
      shortAmps = setShortAmps * commandShare;
      amps = -IGNITION_AMPS;
    }
  }

  private void hold(SimulatedWelder welder, boolean wanted) {
    if (welder.phase() == SimulatedWelder.Phase.AWAY) {
      gapMm = approach(gapMm, AWAY_MM, SWING_MM_PER_S);
    } else {
      gapMm = approach(gapMm, RIGHT_GAP_MM * welder.length(), STEADY_MM_PER_S);
      slope(wanted);
    }
    shortAmps = setShortAmps * commandShare;
    if (gapMm > LONGEST_ARC_MM || commandShare < END_SHARE) {
      open();
    }
  }

  private void slope(boolean up) {
    commandShare +=
        up
            ? (1 - START_SHARE) / UP_SLOPE_SECONDS * tickSeconds
            : -(1 - END_SHARE) / CRATER_FILL_SECONDS * tickSeconds;
    commandShare = Math.min(1, commandShare);
  }

  private void open() {
    state = State.OPEN;
    amps = 0;
    volts = 0;
  }

  @Override
  void step() {
    if (alternating) {
      alternate();
    }
    double knee = FALL_VOLTS + GRADIENT_VOLTS_PER_MM * gapMm + rootVolts;
    if (!alternating) {
      drive(-knee, FALL_OHMS);
    } else if (Math.abs(amps) < THROUGH_ZERO_AMPS) {
      drive(0, knee / THROUGH_ZERO_AMPS + FALL_OHMS);
    } else {
      drive(amps < 0 ? -knee : knee + AC_POSITIVE_VOLTS, FALL_OHMS);
    }
  }

  private void alternate() {
    halfWaveSeconds += stepSeconds;
    double share = sign < 0 ? AC_BALANCE : 1 - AC_BALANCE;
    if (halfWaveSeconds >= share * AC_PERIOD_SECONDS) {
      halfWaveSeconds -= share * AC_PERIOD_SECONDS;
      sign = -sign;
    }
  }

  private void drive(double loadVolts, double loadOhms) {
    double share = sign * amps / shortAmps;
    double drop = sign * droop.volts(share) - loadVolts - loadOhms * amps;
    double ohms = droop.slope(share) / shortAmps + loadOhms;
    double next = amps + drop * stepSeconds / (inductanceHenry + ohms * stepSeconds);
    amps = alternating ? next : Math.min(0, next);
    volts = loadVolts + loadOhms * amps;
  }
}
