package org.boothlamp.health;

/**
 * Why what the sensors say cannot be believed, in words for people. The word is stored in the log:
 * never change one.
 */
public enum HealthFault {
  /** Counts at the end of the converter's range. */
  CLIPPED(
      "clipped",
      "Amps or volts went beyond what the sensors can tell.",
      "look for a loose wire at the converter's input, or take a clamp or divider of a larger"
          + " range"),
  /** The current does not move by a count while it flows. */
  FROZEN_CURRENT(
      "frozen current",
      "The current stood still to the count, as no arc does.",
      "switch the front end off and on, and check the clamp's wires"),
  /** The voltage does not move by a count while current flows. */
  FROZEN_VOLTAGE(
      "frozen voltage",
      "The voltage stood still to the count, as no arc does.",
      "switch the front end off and on, and check the divider's wires"),
  /** Current flows and there is no voltage. */
  AMPS_WITHOUT_VOLTS(
      "amps without volts",
      "Current flowed and no voltage was seen.",
      "check that both voltage taps are on: a booth without them cannot be judged"),
  /** An arc's voltage and no current. */
  VOLTS_WITHOUT_AMPS(
      "volts without amps",
      "An arc's voltage was seen and no current.",
      "check that the clamp is closed around one welding lead"),
  /** The current runs the other way than the procedure asks. */
  WRONG_POLARITY(
      "wrong polarity",
      "The current ran the other way than the procedure asks.",
      "check the leads at the machine"),
  /** Current and voltage have opposite directions: power would flow into the machine. */
  SENSORS_DISAGREE(
      "sensors disagree",
      "Current and voltage ran opposite ways, as no arc does.",
      "turn the clamp round or swap the voltage taps, whichever was touched last"),
  /** The clamp shows current where none flows. */
  ZERO_DRIFT(
      "zero drift",
      "The clamp showed current where none flowed, more than is corrected.",
      "open and close the clamp away from the lead, then set its zero again"),
  /** Noise or mains hum while no current flows. */
  NOISE(
      "noise",
      "Noise or mains hum on the sensors' wires.",
      "check screens and earths of the sensors' wires, and lead them away from the welding leads"),
  /** Too many pairs never arrived. */
  GAPS(
      "gaps",
      "More than a tenth of the samples did not arrive.",
      "check the line to the front end and what else this computer is doing"),
  /** Pairs come faster or slower than the source says. */
  SAMPLE_RATE(
      "sample rate",
      "Samples came faster or slower than the front end says: all times were wrong.",
      "check the rate set in the front end"),
  /** The front end's clock runs away from this computer's. */
  CLOCK_DRIFT(
      "clock drift",
      "The front end's clock ran away from this computer's.",
      "check the front end's clock, and that this computer's load lets it keep time");

  private final String word;
  private final String meaning;
  private final String nextMove;

  HealthFault(String word, String meaning, String nextMove) {
    this.word = word;
    this.meaning = meaning;
    this.nextMove = nextMove;
  }

  /** The word stored in the log and shown to people. */
  public String word() {
    return word;
  }

  /** What was wrong, as a sentence. */
  public String meaning() {
    return meaning;
  }

  /** What to do about it. */
  public String nextMove() {
    return nextMove;
  }
}
