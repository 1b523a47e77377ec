package org.boothlamp.calibration;

/**
 * A calibration is not trusted any more. Immutable.
 *
 * @param fromWallMillis from this time of day on nothing counts as scaled by it, ms since the
 *     epoch; may lie before the day it was noticed
 * @param wallMillis when it was written down, ms since the epoch
 * @param technicianCode who says so, never a name
 * @param reason why
 */
public record Withdrawal(
    long fromWallMillis, long wallMillis, String technicianCode, String reason) {

  public Withdrawal {
    if (reason == null || reason.isBlank()) {
      throw new IllegalArgumentException(
          "a calibration is withdrawn with a reason: reason is blank; give one");
    }
  }
}
