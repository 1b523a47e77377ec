package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.List;

/**
 * What is decided of a calibration. Immutable.
 *
 * @param refusals why it is not accepted; empty if it is
 * @param accuracyClass what the errors were held against
 * @param asFound the scale that was in use before; null if there is no uncertainty to judge it with
 * @param asLeft the scale the fit gives; null likewise
 * @param testUncertaintyRatio error limit over the expanded uncertainty of the calibration, where
 *     it is smallest; NaN likewise
 * @param nextDue day from which the calibration is overdue, if it is accepted
 */
public record Verdict(
    List<Refusal> refusals,
    AccuracyClass accuracyClass,
    Conformity asFound,
    Conformity asLeft,
    double testUncertaintyRatio,
    LocalDate nextDue) {

  public Verdict {
    refusals = List.copyOf(refusals);
  }

  public boolean isAccepted() {
    return refusals.isEmpty();
  }

  /** True if this is one of the reasons. */
  public boolean isRefusedFor(RefusalReason reason) {
    return refusals.stream().anyMatch(refusal -> refusal.reason() == reason);
  }
}
