package org.boothlamp.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How long each trainee was signed in during a shift: from each sign-in to the next at the same
 * booth, as far as it lies in the shift. Immutable.
 */
final class SignedInTime {

  private final Map<String, Double> seconds = new HashMap<>();

  /**
   * @param signIns in order of time, those before the shift that still hold included; empty if not
   *     known
   */
  SignedInTime(List<SignInMoment> signIns, ShiftTime shift) {
    Map<String, SignInMoment> latest = new HashMap<>();
    for (SignInMoment signIn : signIns) {
      add(latest.put(signIn.booth(), signIn), signIn.wallMillis(), shift);
    }
    latest.values().forEach(last -> add(last, Long.MAX_VALUE, shift));
  }

  private void add(SignInMoment signIn, long untilWallMillis, ShiftTime shift) {
    if (signIn != null && !signIn.trainee().isEmpty()) {
      double shared = shift.sharedSeconds(signIn.wallMillis(), untilWallMillis);
      seconds.merge(signIn.trainee(), shared, Double::sum);
    }
  }

  /** Seconds; NaN if it is not known. */
  double of(String trainee) {
    double found = seconds.getOrDefault(trainee, Double.NaN);
    return found > 0 ? found : Double.NaN;
  }
}
