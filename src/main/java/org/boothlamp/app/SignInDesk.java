package org.boothlamp.app;

import org.boothlamp.boothlog.SignIn;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.ProcedureFolder;
import org.boothlamp.settings.ProcedureSettings;
import org.boothlamp.settings.Procedures;
import org.boothlamp.settings.SettingsException;

/**
 * Turns a sign-in into what the monitor judges by: reads the procedure again each time, so that a
 * file that was changed is the one that counts. Confined to one thread: the boothlog's, once the
 * booth runs.
 */
final class SignInDesk {

  /** Told of sign-ins whose procedure cannot be used. */
  @FunctionalInterface
  interface Refusals {

    /** The trainee is signed in, but nothing is judged; {@code why} says what is wrong. */
    void onRefused(String why);
  }

  private static final ChannelUncertainties NO_UNCERTAINTY =
      new ChannelUncertainties(new ExpandedUncertainty(0, 0), new ExpandedUncertainty(0, 0), false);

  private final BoothSettings settings;
  private ChannelUncertainties uncertainties;

  /** Who is signed in; null if nobody has been since the start. */
  private SignIn latest;

  /** A desk of a booth without a calibration. */
  SignInDesk(BoothSettings settings) {
    this(settings, settings.accuracy());
  }

  SignInDesk(BoothSettings settings, ChannelUncertainties uncertainties) {
    this.settings = settings;
    this.uncertainties = uncertainties;
  }

  /**
   * Looks whether the default procedure can be read at all, however wide U is.
   *
   * @throws SettingsException if it cannot
   */
  static void requireReadable(BoothSettings settings) {
    new SignInDesk(settings, NO_UNCERTAINTY).nobody();
  }

  /** What is judged by while nobody is signed in; throws SettingsException if that is refused. */
  Assignment nobody() {
    ProcedureSettings procedures = settings.procedures();
    return procedures.defaultProcedure().isEmpty()
        ? Assignment.NONE
        : new Assignment("", plan(procedures.defaultProcedure(), procedures.defaultPass()));
  }

  /** The same; a procedure that is refused is told of, and nothing is judged. */
  Assignment nobody(Refusals refusals) {
    try {
      return nobody();
    } catch (SettingsException refused) {
      refusals.onRefused(refused.getMessage());
      return Assignment.NONE;
    }
  }

  /** What is judged by from now on, because U changed. */
  Assignment measuredBy(ChannelUncertainties next, Refusals refusals) {
    uncertainties = next;
    return latest == null ? nobody(refusals) : after(latest, refusals);
  }

  /** What is judged by after a sign-in; never throws for a bad procedure, but tells of it. */
  Assignment after(SignIn signIn, Refusals refusals) {
    latest = signIn;
    try {
      if (signIn.isSignOut()) {
        return nobody();
      }
      return signIn.procedureId().isEmpty()
          ? new Assignment(signIn.trainee(), nobody().plan())
          : new Assignment(signIn.trainee(), plan(signIn.procedureId(), signIn.pass()));
    } catch (SettingsException refused) {
      refusals.onRefused(refused.getMessage());
      return new Assignment(signIn.trainee(), null);
    }
  }

  private JudgingPlan plan(String id, String pass) {
    return Procedures.plan(
        ProcedureFolder.read(settings.procedures().folder()).find(id), pass, uncertainties);
  }
}
