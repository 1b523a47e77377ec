package org.boothlamp.app;

import org.boothlamp.boothlog.SignIn;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.ProcedureFolder;
import org.boothlamp.settings.ProcedureSettings;
import org.boothlamp.settings.Procedures;
import org.boothlamp.settings.SettingsException;

/**
 * Turns a sign-in into what the monitor judges by: reads the procedure again each time, so that a
 * file that was changed is the one that counts. Immutable.
 */
final class SignInDesk {

  /** Told of sign-ins whose procedure cannot be used. */
  @FunctionalInterface
  interface Refusals {

    /** The trainee is signed in, but nothing is judged; {@code why} says what is wrong. */
    void onRefused(String why);
  }

  private final BoothSettings settings;

  SignInDesk(BoothSettings settings) {
    this.settings = settings;
  }

  /** What is judged by while nobody is signed in; throws SettingsException if that is refused. */
  Assignment nobody() {
    ProcedureSettings procedures = settings.procedures();
    return procedures.defaultProcedure().isEmpty()
        ? Assignment.NONE
        : new Assignment("", plan(procedures.defaultProcedure(), procedures.defaultPass()));
  }

  /** What is judged by after a sign-in; never throws for a bad procedure, but tells of it. */
  Assignment after(SignIn signIn, Refusals refusals) {
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
        ProcedureFolder.read(settings.procedures().folder()).find(id), pass, settings.accuracy());
  }
}
