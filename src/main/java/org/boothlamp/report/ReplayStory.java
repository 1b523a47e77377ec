package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.words.Phrases;

/**
 * What happens in a run from moment to moment, in one language: spells that follow each other
 * without holes, the last of which says how the run ended. Immutable.
 */
public final class ReplayStory {

  private final List<ReplaySpell> spells;

  private ReplayStory(List<ReplaySpell> spells) {
    this.spells = List.copyOf(spells);
  }

  /** Tells a run. */
  public static ReplayStory of(WeldReplay replay, Phrases phrases) {
    ReplaySentences sentences = new ReplaySentences(replay, phrases);
    List<ReplaySpell> spells = new ArrayList<>();
    int from = 0;
    for (int k = 1; k <= replay.frames(); k++) {
      String says = sentences.at(from);
      if (k == replay.frames() || !says.equals(sentences.at(k))) {
        spells.add(spell(from, k, says));
        from = k;
      }
    }
    double end = replay.frames() * WeldReplay.FRAME_SECONDS;
    spells.add(new ReplaySpell(end, Double.POSITIVE_INFINITY, sentences.end()));
    return new ReplayStory(spells);
  }

  private static ReplaySpell spell(int from, int until, String says) {
    return new ReplaySpell(from * WeldReplay.FRAME_SECONDS, until * WeldReplay.FRAME_SECONDS, says);
  }

  /** All spells in order; the last one has no end. */
  public List<ReplaySpell> spells() {
    return spells;
  }

  /** What happens at a moment, seconds from 0 on. */
  public ReplaySpell at(double seconds) {
    ReplaySpell found = spells.get(0);
    for (ReplaySpell spell : spells) {
      if (spell.fromSeconds() <= seconds + WeldReplay.FRAME_SECONDS / 2) {
        found = spell;
      }
    }
    return found;
  }
}
