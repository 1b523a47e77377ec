package org.boothlamp.report;

/**
 * What a bead's length can be. The limits keep out slips of the hand, such as inches for
 * millimetres or the number of another run; they say nothing of a good weld. Common practice, no
 * source.
 */
public final class BeadRule {

  /** Characters in a note or in an instructor's words, at most. */
  public static final int LONGEST_NOTE = 200;

  /** Shorter is no bead: about a crater's radius. */
  static final double SHORTEST_MM = 1;

  /** Longer than any joint of a training booth. */
  static final double LONGEST_MM = 10_000;

  /** An arc that goes slower than 6 mm/min stands. */
  static final double SLOWEST_MM_PER_S = 0.1;

  /** 3 m/min: above what an arc is led at by hand, and by most machines. */
  static final double FASTEST_MM_PER_S = 50;

  private BeadRule() {}

  /**
   * Holds a length against what is possible for a run.
   *
   * @throws BeadRefusedException if it cannot be the run's bead
   */
  public static void check(RunRecord run, double lengthMillimetres) {
    requireEnded(run);
    if (!(lengthMillimetres >= SHORTEST_MM && lengthMillimetres <= LONGEST_MM)) {
      throw BeadRefusedException.length(lengthMillimetres);
    }
    double speed = lengthMillimetres / run.lengthSeconds();
    if (speed < SLOWEST_MM_PER_S || speed > FASTEST_MM_PER_S) {
      throw BeadRefusedException.speed(run, lengthMillimetres);
    }
  }

  private static void requireEnded(RunRecord run) {
    if (run.end().equals("running")) {
      throw BeadRefusedException.running(run.id());
    }
    if (!(run.lengthSeconds() > 0) || Double.isNaN(run.energyJoules())) {
      throw BeadRefusedException.lost(run.id());
    }
  }

  /**
   * A note on one line, without blanks around it.
   *
   * @throws BeadRefusedException if it is too long
   */
  public static String note(String typed) {
    String note = typed.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
    int characters = note.codePointCount(0, note.length());
    if (characters > LONGEST_NOTE) {
      throw BeadRefusedException.note(characters);
    }
    return note;
  }
}
