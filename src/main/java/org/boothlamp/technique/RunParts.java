package org.boothlamp.technique;

import java.util.Arrays;
import java.util.List;
import org.boothlamp.procedure.Process;

/**
 * Which points of a run belong to its start, to a spell, to the steady part, to the crater fill.
 * Confined to one thread.
 */
final class RunParts {

  /** Length of the trailing average that the judging used, s. */
  private static final double AVERAGE_SECONDS = 1;

  /** From the strike on, s: nobody is steady before, and the edge slots hold less than arc. */
  private static final double START_SECONDS = 0.5;

  /** Steady points without which there is no own steady part: 1.5 s. */
  static final int LEAST_STEADY_POINTS = RunProfile.PER_SECOND * 3 / 2;

  private static final double MOST_OF_THE_RUN = 0.5;

  /** Judgements come every 0.1 s, and one may fall inside. */
  private static final double FIRST_SECONDS = 0.25;

  private static final int LEAST_SPELL_POINTS = RunProfile.PER_SECOND / 2;

  /**
   * A slope has left the level of the run below the first, and is one if it gets below the second.
   */
  private static final double LEVEL_SHARE = 0.97;

  private static final double SLOPE_SHARE = 0.75;

  private final RunProfile profile;
  private final List<Spell> spells;
  private final int from;
  private final int until;

  RunParts(RunProfile profile, List<Spell> spells, Process process) {
    this.profile = profile;
    this.spells = spells;
    boolean slopes = process.isTig() || process == Process.PLASMA;
    double level = slopes ? medianAmps() : Double.NaN;
    from = Math.max(profile.pointAt(START_SECONDS), slopes ? slopeEnd(level) : 0);
    until = slopes ? slopeStart(level) : profile.size();
  }

  private double medianAmps() {
    return RobustLine.median(
        Arrays.stream(profile.allAmps()).filter(a -> !Double.isNaN(a)).toArray());
  }

  /** First point at the level of the run, if the run began well below it. */
  private int slopeEnd(double level) {
    int k = 0;
    while (k < profile.size() && !(profile.amps(k) >= LEVEL_SHARE * level)) {
      k++;
    }
    return k == profile.size() ? 0 : k;
  }

  /** First point of the fall in which the run ended, or its end. */
  private int slopeStart(double level) {
    int k = profile.size();
    boolean deep = false;
    while (k > 0 && !(profile.amps(k - 1) >= LEVEL_SHARE * level)) {
      k--;
      deep |= profile.amps(k) < SLOPE_SHARE * level;
    }
    return deep ? k : profile.size();
  }

  /** The points whose values made a spell, half an average before what the judging says. */
  boolean[] of(Spell spell) {
    boolean[] use = new boolean[profile.size()];
    int end = profile.pointAt(spell.endSeconds() - AVERAGE_SECONDS / 2);
    int start = profile.pointAt(spell.startSeconds() - AVERAGE_SECONDS / 2);
    start = Math.max(Math.min(start, end - LEAST_SPELL_POINTS), Math.min(from, end - 1));
    fill(use, start, Math.min(end, Math.max(until, start)));
    return use;
  }

  /** The points outside every spell, or outside those of the same quantity if that is too few. */
  boolean[] steadyBeside(Spell spell) {
    boolean[] outsideAll = outside(null);
    return count(outsideAll) >= LEAST_STEADY_POINTS ? outsideAll : outside(spell);
  }

  private boolean[] outside(Spell like) {
    boolean[] use = new boolean[profile.size()];
    fill(use, from, until);
    for (Spell spell : spells) {
      if (like == null || spell.quantity() == like.quantity()) {
        clear(use, spell);
      }
    }
    return use;
  }

  private void clear(boolean[] use, Spell spell) {
    int end = profile.pointAt(spell.endSeconds());
    for (int k = profile.pointAt(spell.startSeconds() - AVERAGE_SECONDS); k < end; k++) {
      use[k] = false;
    }
  }

  /** The points between start and crater fill. */
  boolean[] level() {
    boolean[] use = new boolean[profile.size()];
    fill(use, from, until);
    return use;
  }

  /**
   * The points between start and crater fill, without those of a spell unless it is most of them.
   */
  boolean[] levelWithout(Spell spell) {
    boolean[] use = level();
    clear(use, spell);
    return count(use) >= LEAST_STEADY_POINTS ? use : level();
  }

  /** True if a spell is made by the up-slope or the crater fill. */
  boolean isSlope(Spell spell) {
    double slope = until * RunProfile.POINT_SECONDS;
    double shiftedStart = spell.startSeconds() - AVERAGE_SECONDS / 2;
    boolean inFill = until < profile.size() && shiftedStart >= slope - AVERAGE_SECONDS / 2;
    double start = from * RunProfile.POINT_SECONDS;
    boolean inStart = start > START_SECONDS && spell.endSeconds() <= start + AVERAGE_SECONDS;
    return inFill || inStart;
  }

  /**
   * True if this average was out on this side with the first judgement, or for most of the run:
   * then what is inside the window need not be the steady part.
   */
  boolean isGeneral(Spell spell) {
    double seconds = 0;
    boolean fromTheFirst = false;
    for (Spell other : spells) {
      if (other.quantity() == spell.quantity() && other.side() == spell.side()) {
        seconds += other.seconds();
        fromTheFirst |= isFromTheFirstSecond(other);
      }
    }
    return fromTheFirst || seconds > MOST_OF_THE_RUN * (profile.seconds() - AVERAGE_SECONDS);
  }

  private boolean isFromTheFirstSecond(Spell spell) {
    double first = Math.max(AVERAGE_SECONDS, from * RunProfile.POINT_SECONDS);
    return spell.startSeconds() <= first + FIRST_SECONDS;
  }

  private static void fill(boolean[] use, int from, int until) {
    for (int k = Math.max(0, from); k < Math.min(until, use.length); k++) {
      use[k] = true;
    }
  }

  static int count(boolean[] use) {
    int count = 0;
    for (boolean one : use) {
      count += one ? 1 : 0;
    }
    return count;
  }
}
