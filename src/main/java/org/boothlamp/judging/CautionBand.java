package org.boothlamp.judging;

import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * A window with its caution band: the larger of 10 % of the width and the expanded uncertainty of
 * the channel, as a guard band after JCGM 106:2012. Immutable.
 *
 * @param window the limits
 * @param band width of the caution band at either limit, in the window's unit
 */
public record CautionBand(Window window, double band) {

  /** Share of the window's width that always counts as near. */
  public static final double WIDTH_SHARE = 0.1;

  /**
   * The band of one live window of a pass.
   *
   * @throws WindowTooNarrowException if two bands leave nothing between them
   */
  public static CautionBand of(Pass pass, Window window, ChannelUncertainties uncertainties) {
    double expanded = uncertaintyOf(pass, window, uncertainties);
    double band = Math.max(WIDTH_SHARE * window.width(), expanded);
    if (2 * band >= window.width()) {
      throw new WindowTooNarrowException(pass, window, expanded);
    }
    return new CautionBand(window, band);
  }

  /** U at the high limit, where it is largest inside the window. Counts of shorts have none. */
  private static double uncertaintyOf(
      Pass pass, Window window, ChannelUncertainties uncertainties) {
    return switch (window.quantity()) {
      case AMPS -> uncertainties.amps().at(window.high());
      case VOLTS -> uncertainties.volts().at(window.high());
      case POWER_W -> wattsUncertainty(pass, window, uncertainties);
      default -> 0;
    };
  }

  /**
   * At the amps and volts of the pass, as far as it limits them; the power's high limit closes the
   * rest.
   */
  private static double wattsUncertainty(
      Pass pass, Window window, ChannelUncertainties uncertainties) {
    Window amps = pass.window(Quantity.AMPS);
    Window volts = pass.window(Quantity.VOLTS);
    if (amps != null) {
      return uncertainties.watts(amps.high(), window.high() / amps.high());
    }
    if (volts != null) {
      return uncertainties.watts(window.high() / volts.high(), volts.high());
    }
    return uncertainties.watts(window.high() / TYPICAL_VOLTS, TYPICAL_VOLTS);
  }

  /**
   * A mid-range arc voltage; common practice, no source. Used only where a pass limits power alone.
   */
  private static final double TYPICAL_VOLTS = 22;

  /** The zone of an average, as a level: out is red, near is amber, in is green; NaN is out. */
  public Level level(double average) {
    if (!(average >= window.low() && average <= window.high())) {
      return Level.RED;
    }
    boolean near = average - window.low() < band || window.high() - average < band;
    return near ? Level.AMBER : Level.GREEN;
  }

  /** True if an average is outside the window; NaN is outside. */
  public boolean isOutside(double average) {
    return level(average) == Level.RED;
  }
}
