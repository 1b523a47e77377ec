package org.boothlamp.judging;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Window;

/**
 * A pass made ready for judging: its live windows with their caution bands. Made once when a
 * procedure is loaded, outside the sampler's path. Immutable.
 */
public final class JudgingPlan {

  private final Procedure procedure;
  private final Pass pass;
  private final ChannelUncertainties uncertainties;
  private final CautionBand[] bands;

  /**
   * A plan for one pass.
   *
   * @throws WindowTooNarrowException if a window is too narrow for the uncertainty
   */
  public JudgingPlan(Procedure procedure, Pass pass, ChannelUncertainties uncertainties) {
    this.procedure = procedure;
    this.pass = pass;
    this.uncertainties = uncertainties;
    List<CautionBand> live = new ArrayList<>();
    for (Window window : pass.windows()) {
      if (window.quantity().isLive()) {
        live.add(CautionBand.of(pass, window, uncertainties));
      }
    }
    bands = live.toArray(new CautionBand[0]);
  }

  /** The procedure. */
  public Procedure procedure() {
    return procedure;
  }

  /** The pass. */
  public Pass pass() {
    return pass;
  }

  /** True if the caution bands rest on a calibration. */
  public boolean isCalibrated() {
    return uncertainties.calibrated();
  }

  /** What the caution bands rest on. */
  public ChannelUncertainties uncertainties() {
    return uncertainties;
  }

  /** Number of live windows. */
  public int size() {
    return bands.length;
  }

  /** The live window number {@code index}, with its band. */
  public CautionBand band(int index) {
    return bands[index];
  }
}
