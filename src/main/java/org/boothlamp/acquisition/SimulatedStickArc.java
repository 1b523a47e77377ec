package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * Stick welding on a drooping source. The electrode is struck on the work; its droplets grow,
 * stretch, and often bridge the arc for some milliseconds; the hand holds the gap between core wire
 * and work. Confined to one thread.
 */
final class SimulatedStickArc extends SimulatedArc {

  private enum State {
    OPEN,
    CONTACT,
    ARC,
    BRIDGE
  }

  private static final double OPEN_VOLTS = 72;

  /**
   * Exponent that fits a published curve: 80 V open circuit, 123 A at 20 V, 115 A at 25 V
   * (distributor's glossary that reproduces a welding handbook's figure).
   */
  static final double DROOP_EXPONENT = 1.33;

  /** Volts at which the machine's scale is marked: 20 + 0.04 I after IEC 60974-1, about. */
  private static final double SCALE_VOLTS = 23.5;

  private static final double INDUCTANCE_HENRY = 0.0005;

  private static final double FALL_VOLTS = 15.4;
  private static final double FALL_OHMS = 0.015;
  private static final double GRADIENT_VOLTS_PER_MM = 2.1;
  private static final double CONTACT_OHMS = 0.018;

  private static final double RIGHT_GAP_MM = 4.2;
  private static final double AWAY_MM = 20;
  private static final double CONTACT_MM = -0.5;
  private static final double LONGEST_ARC_MM = 12;
  private static final double LEAST_AMPS = 15;
  private static final double STRIKE_SECONDS = 0.04;
  private static final double SWING_MM_PER_S = 500;
  private static final double STEADY_MM_PER_S = 150;

  /** Diameter of the liquid left on the tip. */
  private static final double LEAST_DROP_MM = 0.8;

  private static final double DROP_MM = 2.3;
  private static final double DROP_SPREAD = 0.12;

  /** Share of a droplet's diameter by which it shortens the arc. */
  private static final double DROP_IN_GAP = 0.6;

  private static final double MELT_MM3_PER_AMP_S = 0.29;
  private static final double STRETCH_MM_PER_S = 200;
  private static final double STRETCH_MM = 1.9;
  private static final double STRETCH_SPREAD = 0.3;
  private static final double NECK_PER_S = 80;
  private static final double NECK_PER_AMP2_S = 0.0035;
  private static final double NECK_SPREAD = 0.2;
  private static final double POOL_MM = 0.25;
  private static final double POOL_MEMORY_SECONDS = 0.02;
  private static final double ROOT_VOLTS = 0.6;
  private static final double ROOT_MEMORY_SECONDS = 0.002;

  private final SimulatedDroop droop = new SimulatedDroop(OPEN_VOLTS, DROOP_EXPONENT);
  private final SimulatedWander pool;
  private final SimulatedWander root;
  private State state = State.OPEN;
  private double shortAmps;
  private double gapMm;
  private double contactSeconds;
  private boolean struck;
  private double poolMm;
  private double rootVolts;
  private double dropMm;
  private double dropLimitMm;
  private double stretchMm;
  private double stretchLimitMm;
  private double neck;
  private double neckLimit;

  SimulatedStickArc(double tickSeconds, double stepSeconds, SplittableRandom random) {
    super(tickSeconds, stepSeconds, random);
    pool = new SimulatedWander(tickSeconds, POOL_MEMORY_SECONDS);
    root = new SimulatedWander(tickSeconds, ROOT_MEMORY_SECONDS);
  }

  @Override
  void begin(SimulatedWelder welder) {
    shortAmps = welder.setAmps() / droop.shareAt(SCALE_VOLTS);
    gapMm = AWAY_MM;
    struck = false;
    shedDrop();
    open();
  }

  @Override
  boolean conducts() {
    return state != State.OPEN;
  }

  @Override
  void tick(SimulatedWelder welder) {
    moveHand(welder);
    poolMm = POOL_MM * pool.next(random);
    rootVolts = ROOT_VOLTS * root.next(random);
    switch (state) {
      case OPEN -> touchWhenClose();
      case CONTACT -> leaveWhenLifted();
      case ARC -> goOutWhenTooLong();
      case BRIDGE -> {}
    }
  }

  private void moveHand(SimulatedWelder welder) {
    boolean holds = welder.phase() == SimulatedWelder.Phase.HOLDING;
    struck = holds && (struck || contactSeconds >= STRIKE_SECONDS);
    if (struck) {
      gapMm = approach(gapMm, RIGHT_GAP_MM * welder.length(), STEADY_MM_PER_S);
    } else {
      boolean down = holds || welder.phase() == SimulatedWelder.Phase.TOUCHING;
      gapMm = approach(gapMm, down ? CONTACT_MM : AWAY_MM, SWING_MM_PER_S);
    }
  }

  private void touchWhenClose() {
    if (gapMm <= 0) {
      state = State.CONTACT;
      contactSeconds = 0;
    }
  }

  private void leaveWhenLifted() {
    contactSeconds += tickSeconds;
    if (gapMm > 0) {
      contactSeconds = 0;
      shedDrop();
      state = State.ARC;
    }
  }

  private void goOutWhenTooLong() {
    if (gapMm > LONGEST_ARC_MM || amps < LEAST_AMPS) {
      open();
    }
  }

  private void open() {
    state = State.OPEN;
    contactSeconds = 0;
    amps = 0;
    volts = OPEN_VOLTS;
  }

  private void shedDrop() {
    dropMm = LEAST_DROP_MM;
    dropLimitMm = DROP_MM * spread(DROP_SPREAD);
    stretchMm = 0;
    stretchLimitMm = STRETCH_MM * spread(STRETCH_SPREAD);
  }

  @Override
  void step() {
    if (state == State.ARC) {
      burn();
    } else {
      drive(0, CONTACT_OHMS);
      if (state == State.BRIDGE) {
        pinch();
      }
    }
  }

  private void burn() {
    growDrop();
    double arcMm = gapMm - poolMm - DROP_IN_GAP * dropMm - stretchMm;
    // just after the strike the gap is shorter than the liquid on the tip, and yet it burns
    if (arcMm <= 0 && stretchMm > 0) {
      state = State.BRIDGE;
      neck = 0;
      neckLimit = spread(NECK_SPREAD);
    }
    double length = Math.max(0, arcMm);
    drive(FALL_VOLTS + GRADIENT_VOLTS_PER_MM * length + rootVolts, FALL_OHMS);
  }

  /** Volume per time over the sphere's area is the growth of its radius. */
  private void growDrop() {
    if (dropMm < dropLimitMm) {
      double mm3 = MELT_MM3_PER_AMP_S * amps * stepSeconds;
      dropMm += 2 * mm3 / (Math.PI * dropMm * dropMm);
      return;
    }
    stretchMm += STRETCH_MM_PER_S * stepSeconds;
    if (stretchMm > stretchLimitMm) {
      shedDrop();
    }
  }

  /** Surface tension and the magnetic pinch, which goes with the square of the current. */
  private void pinch() {
    neck += (NECK_PER_S + NECK_PER_AMP2_S * amps * amps) * stepSeconds;
    if (neck > neckLimit && gapMm > 0) {
      shedDrop();
      state = State.ARC;
    }
  }

  private void drive(double loadVolts, double loadOhms) {
    double share = amps / shortAmps;
    double drop = droop.volts(share) - loadVolts - loadOhms * amps;
    double ohms = droop.slope(share) / shortAmps + loadOhms;
    double change = drop * stepSeconds / (INDUCTANCE_HENRY + ohms * stepSeconds);
    amps = Math.max(0, amps + change);
    volts = loadVolts + loadOhms * amps;
  }
}
