package org.boothlamp.settings;

import java.util.List;
import java.util.stream.Collectors;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.SignificantFigures;
import org.boothlamp.judging.WindowTooNarrowException;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Window;

/** Makes loaded procedures ready for judging, with refusals that name file and line. */
public final class Procedures {

  private Procedures() {}

  /**
   * The pass of a procedure by name.
   *
   * @param name may be empty if the procedure has only one pass
   * @throws SettingsException if there is no such pass, or the name is empty and there are several
   */
  public static Pass pass(LoadedProcedure loaded, String name) {
    List<Pass> passes = loaded.procedure().passes();
    if (name.isEmpty() && passes.size() == 1) {
      return passes.get(0);
    }
    Pass pass = loaded.procedure().pass(name);
    if (pass == null) {
      throw noSuchPass(loaded, name);
    }
    return pass;
  }

  private static SettingsException noSuchPass(LoadedProcedure loaded, String name) {
    List<String> names = loaded.procedure().passes().stream().map(Pass::name).toList();
    String known = names.stream().map(Literal::of).collect(Collectors.joining(", "));
    String rule =
        name.isEmpty()
            ? "procedure " + loaded.procedure().id() + " has several passes, but none is named"
            : "procedure " + loaded.procedure().id() + " has no pass " + Literal.of(name);
    Problems problems = new Problems(loaded.file());
    problems.addWholeFile(rule, "name one of its passes: " + known);
    return problems.refusal();
  }

  /**
   * The plan for one pass.
   *
   * @param passName may be empty if the procedure has only one pass
   * @throws SettingsException if there is no such pass, or with every window of it that is too
   *     narrow for the uncertainty
   */
  public static JudgingPlan plan(
      LoadedProcedure loaded, String passName, ChannelUncertainties uncertainties) {
    Pass pass = pass(loaded, passName);
    Problems problems = new Problems(loaded.file());
    checkPass(loaded, pass, uncertainties, problems);
    problems.throwIfAny();
    return new JudgingPlan(loaded.procedure(), pass, uncertainties);
  }

  /**
   * Checks that every pass can be judged.
   *
   * @throws SettingsException with every window that is too narrow for the uncertainty
   */
  public static void check(LoadedProcedure loaded, ChannelUncertainties uncertainties) {
    Problems problems = new Problems(loaded.file());
    for (Pass pass : loaded.procedure().passes()) {
      checkPass(loaded, pass, uncertainties, problems);
    }
    problems.throwIfAny();
  }

  private static void checkPass(
      LoadedProcedure loaded, Pass pass, ChannelUncertainties uncertainties, Problems problems) {
    for (Window window : pass.windows()) {
      if (window.quantity().isLive()) {
        checkWindow(loaded, pass, window, uncertainties, problems);
      }
    }
  }

  private static void checkWindow(
      LoadedProcedure loaded,
      Pass pass,
      Window window,
      ChannelUncertainties uncertainties,
      Problems problems) {
    try {
      CautionBand.of(pass, window, uncertainties);
    } catch (WindowTooNarrowException refused) {
      problems.add(
          loaded.lineOf(pass, window.quantity()),
          LoadedProcedure.keyOf(pass, window.quantity()),
          refused.getMessage(),
          nextMove(refused, uncertainties));
    }
  }

  private static String nextMove(
      WindowTooNarrowException refused, ChannelUncertainties uncertainties) {
    Window window = refused.window();
    String unit = " " + window.quantity().unit();
    String widen =
        "make it wider than " + SignificantFigures.of(2 * refused.expandedUncertainty(), 3) + unit;
    String improve =
        uncertainties.calibrated()
            ? ", or calibrate with a better reference meter, until U is below "
            : ", or calibrate the sensor (its stated U is [accuracy] in booth.toml), until U is below ";
    return widen + improve + SignificantFigures.of(window.width() / 2, 3) + unit;
  }
}
