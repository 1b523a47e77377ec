package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * Wire of 0.9 mm in short-circuit transfer on a constant-voltage source. The wire is fed at a
 * steady speed and melts by {@code alpha I + beta extension I^2}; its droplet meets the pool, the
 * current rises, the neck is pinched off, the arc lights again. The rate of short circuits is no
 * number in here: it follows. Confined to one thread.
 */
final class SimulatedWireArc extends SimulatedArc {

  private enum State {
    OPEN,
    ARC,
    BRIDGE
  }

  private static final double WIRE_MM = 0.9;
  private static final double WIRE_AREA_MM2 = Math.PI / 4 * WIRE_MM * WIRE_MM;

  /**
   * Melting by arc heat and by resistance (form: Lesnewich); values from memory for 1.2 mm mild
   * steel, 0.3 mm/(A s) and 5e-5 1/(A² s), scaled by the wire's area and its square.
   */
  private static final double ALPHA_MM_PER_AMP_S = 0.3 * 1.2 * 1.2 / (WIRE_MM * WIRE_MM);

  private static final double BETA_PER_AMP2_S = 5e-5 * Math.pow(1.2 / WIRE_MM, 4);

  private static final double INDUCTANCE_HENRY = 0.00022;
  static final double SOURCE_OHMS = 0.025;
  private static final double EXTENSION_OHMS_PER_MM = 0.0008;
  private static final double BRIDGE_OHMS = 0.004;
  private static final double FALL_VOLTS = 15.6;
  private static final double FALL_OHMS = 0.012;
  private static final double GRADIENT_VOLTS_PER_MM = 1.2;

  private static final double RIGHT_CONTACT_TIP_MM = 12;
  private static final double STARTING_GAP_MM = 4;
  private static final double LEAST_AMPS = 8;

  /** One knob sets both, as on a machine with a synergic line. */
  private static final double FEED_MM_PER_AMP_S = 0.89;

  private static final double FEED_AT_NO_AMPS_MM_PER_S = -27.5;
  private static final double LEAST_FEED_MM_PER_S = 20;

  private static final double KNOB_AMPS = 142;
  static final double KNOB_VOLTS = 20.2;
  private static final double KNOB_VOLTS_PER_AMP = 0.03;

  private static final double LEAST_DROP_MM = 0.55;
  private static final double LARGEST_DROP_MM = 2.4;
  private static final double LEAST_ARC_MM = 0.25;
  private static final double NECK_PER_S = 80;
  private static final double NECK_PER_AMP2_S = 0.0072;
  private static final double NECK_SPREAD = 0.2;
  private static final double POOL_MM = 0.22;
  private static final double POOL_MEMORY_SECONDS = 0.006;
  private static final double ROOT_VOLTS = 0.5;
  private static final double ROOT_MEMORY_SECONDS = 0.002;

  private final SimulatedWander pool;
  private final SimulatedWander root;
  private State state = State.OPEN;
  private boolean triggered;
  private double openVolts;
  private double setOpenVolts;
  private double setFeedMmPerS;
  private double feedMmPerS;
  private double tipMm;
  private double extensionMm;
  private double poolMm;
  private double rootVolts;
  private double dropMm;
  private double neck;
  private double neckLimit;

  SimulatedWireArc(double tickSeconds, double stepSeconds, SplittableRandom random) {
    super(tickSeconds, stepSeconds, random);
    pool = new SimulatedWander(tickSeconds, POOL_MEMORY_SECONDS);
    root = new SimulatedWander(tickSeconds, ROOT_MEMORY_SECONDS);
  }

  @Override
  void begin(SimulatedWelder welder) {
    setFeedMmPerS =
        Math.max(
            LEAST_FEED_MM_PER_S, FEED_AT_NO_AMPS_MM_PER_S + FEED_MM_PER_AMP_S * welder.setAmps());
    setOpenVolts = KNOB_VOLTS + KNOB_VOLTS_PER_AMP * (welder.setAmps() - KNOB_AMPS);
    tipMm = RIGHT_CONTACT_TIP_MM * welder.length();
    dropMm = LEAST_DROP_MM;
    extensionMm = Math.max(0, tipMm - STARTING_GAP_MM);
    triggered = false;
    open();
  }

  @Override
  boolean conducts() {
    return state != State.OPEN;
  }

  @Override
  void tick(SimulatedWelder welder) {
    followTrigger(welder.phase());
    tipMm = RIGHT_CONTACT_TIP_MM * welder.length();
    poolMm = POOL_MM * pool.next(random);
    rootVolts = ROOT_VOLTS * root.next(random);
    if (state == State.OPEN) {
      feedUntilContact();
    } else if (amps < LEAST_AMPS && (state == State.ARC || !triggered)) {
      open();
    }
  }

  private void followTrigger(SimulatedWelder.Phase phase) {
    triggered = phase == SimulatedWelder.Phase.HOLDING || phase == SimulatedWelder.Phase.TOUCHING;
    openVolts = triggered ? setOpenVolts : 0;
    feedMmPerS = triggered ? setFeedMmPerS : 0;
  }

  private void feedUntilContact() {
    volts = openVolts;
    extensionMm += feedMmPerS * tickSeconds;
    if (triggered && arcMm() <= 0) {
      bridge();
    }
  }

  private double arcMm() {
    return tipMm - extensionMm - poolMm - dropMm;
  }

  private void open() {
    state = State.OPEN;
    amps = 0;
    volts = triggered ? openVolts : 0;
  }

  private void bridge() {
    state = State.BRIDGE;
    neck = 0;
    neckLimit = spread(NECK_SPREAD);
  }

  @Override
  void step() {
    if (state == State.ARC) {
      burn();
    } else {
      pinch();
    }
  }

  private void burn() {
    melt(ALPHA_MM_PER_AMP_S);
    double arcMm = arcMm();
    if (arcMm <= 0) {
      bridge();
    } else if (dropMm > LARGEST_DROP_MM) {
      dropMm = LEAST_DROP_MM;
    }
    drive(
        FALL_VOLTS + GRADIENT_VOLTS_PER_MM * Math.max(0, arcMm) + rootVolts,
        FALL_OHMS + EXTENSION_OHMS_PER_MM * extensionMm);
  }

  /** Surface tension and the magnetic pinch, which goes with the square of the current. */
  private void pinch() {
    melt(0);
    drive(0, BRIDGE_OHMS + EXTENSION_OHMS_PER_MM * extensionMm);
    neck += (NECK_PER_S + NECK_PER_AMP2_S * amps * amps) * stepSeconds;
    if (neck > neckLimit) {
      rupture();
    }
  }

  /** The droplet is in the pool; a wire that reaches in is burnt back. */
  private void rupture() {
    dropMm = LEAST_DROP_MM;
    extensionMm = Math.min(extensionMm, extensionMm + arcMm() - LEAST_ARC_MM);
    state = State.ARC;
  }

  private void melt(double alpha) {
    double meltMmPerS = alpha * amps + BETA_PER_AMP2_S * extensionMm * amps * amps;
    extensionMm = Math.max(0, extensionMm + (feedMmPerS - meltMmPerS) * stepSeconds);
    double mm3 = WIRE_AREA_MM2 * meltMmPerS * stepSeconds;
    dropMm += 2 * mm3 / (Math.PI * dropMm * dropMm);
  }

  private void drive(double loadVolts, double loadOhms) {
    double ohms = SOURCE_OHMS + loadOhms;
    double drop = openVolts - loadVolts - ohms * amps;
    amps = Math.max(0, amps + drop * stepSeconds / (INDUCTANCE_HENRY + ohms * stepSeconds));
    volts = loadVolts + loadOhms * amps;
  }
}
