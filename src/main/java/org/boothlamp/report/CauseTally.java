package org.boothlamp.report;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.TechniqueReading;

/**
 * The cause that some runs' excursions had most often. Immutable.
 *
 * @param cause something that can be done otherwise: hand or setting
 * @param count excursions it had
 * @param excursions all that were read, without slopes and whipping
 */
record CauseTally(Cause cause, int count, int excursions) {

  /** The most frequent cause, the earlier named of two that are alike; null if there is none. */
  static CauseTally of(List<RunRecord> runs) {
    Map<Cause, Integer> counts = new EnumMap<>(Cause.class);
    int excursions = 0;
    for (RunRecord run : runs) {
      TechniqueReading reading = run.notes().technique();
      for (ExplainedSpell spell : reading == null ? List.<ExplainedSpell>of() : reading.spells()) {
        if (spell.cause() != Cause.SLOPE && spell.cause() != Cause.WHIP) {
          counts.merge(spell.cause(), 1, Integer::sum);
          excursions++;
        }
      }
    }
    counts.remove(Cause.CANNOT_TELL);
    int all = excursions;
    return counts.entrySet().stream()
        .max(
            Map.Entry.<Cause, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(most -> new CauseTally(most.getKey(), most.getValue(), all))
        .orElse(null);
  }
}
