package org.boothlamp.calibration;

import java.util.Locale;

/** Why a calibration is not accepted. */
public enum RefusalReason {
  NOT_MEASURED,
  TOO_FEW_LEVELS,
  SPAN_TOO_SMALL,
  ZERO_MISSING,
  DIRECTION_MISSING,
  CERTIFICATE_OUT_OF_DATE,
  GAIN_IMPLAUSIBLE,
  CURVED,
  HYSTERESIS_TOO_LARGE,
  REFERENCE_TOO_COARSE,
  OUTSIDE_CLASS;

  /** In lower case with hyphens, as records store it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
