package org.boothlamp.calibration;

/** How much each point counts in the fit. */
public enum Weighting {
  /** All the same. */
  ORDINARY,
  /** By the inverse square of its own standard uncertainty: scatter of its mean and resolutions. */
  BY_UNCERTAINTY
}
