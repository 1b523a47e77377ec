package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.ShortCircuitRule;

/**
 * One short circuit: the time for which a droplet bridged the arc. Immutable.
 *
 * @param startSeconds seconds since the run's start
 * @param lengthSeconds how long
 */
public record ShortSpell(double startSeconds, double lengthSeconds) {

  /**
   * All that end in a window, by the rule that counts them live.
   *
   * @return null if the recording is too slow to tell
   */
  public static List<ShortSpell> in(RawWindow window, ShortCircuitRule rule) {
    if (!ShortCircuitRule.isMeasurableAt(window.recording().pairsPerSecond())) {
      return null;
    }
    Finder finder = new Finder(window, rule);
    window.read(finder);
    return finder.found;
  }

  private static final class Finder implements RawPairSink {

    private final List<ShortSpell> found = new ArrayList<>();
    private final RawWindow window;
    private final ShortCircuitRule rule;
    private final PairScale scale;
    private final int rate;
    private final long leastPairs;
    private long pair;
    private long run;

    Finder(RawWindow window, ShortCircuitRule rule) {
      this.window = window;
      this.rule = rule;
      scale = window.recording().scale();
      rate = window.recording().pairsPerSecond();
      leastPairs = Math.max(1, Math.round(ShortCircuitRule.LEAST_SECONDS * rate));
    }

    @Override
    public void take(short current, short voltage) {
      double amps = scale.current().toUnits(current);
      if (rule.isShorted(amps, scale.voltage().toUnits(voltage))) {
        run++;
      } else {
        if (run >= leastPairs && rule.isFlowing(amps)) {
          found.add(new ShortSpell(secondsOf(pair - run), (double) run / rate));
        }
        run = 0;
      }
      pair++;
    }

    private double secondsOf(long at) {
      return window.fromSeconds() + (double) at / rate;
    }

    @Override
    public void miss() {
      run = 0;
      pair++;
    }
  }
}
