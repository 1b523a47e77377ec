package org.boothlamp.app;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SignIns;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.page.SignInPort;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.LoadedProcedure;
import org.boothlamp.settings.ProcedureFolder;
import org.boothlamp.settings.Procedures;
import org.boothlamp.settings.SettingsException;
import org.boothlamp.signal.PairScale;
import org.tinylog.Logger;

/** Signs in from the page as the command does: a row in the log, which the monitor notices. */
final class PageSignIns implements SignInPort {

  private final BoothSettings settings;
  private final PairScale nominal;
  private final Path log;
  private final WallClock clock;

  PageSignIns(BoothSettings settings, PairScale nominal, Path log, WallClock clock) {
    this.settings = settings;
    this.nominal = nominal;
    this.log = log;
    this.clock = clock;
  }

  /** None if their folder cannot be read, which the command check explains. */
  @Override
  public List<Choice> choices() {
    try {
      return choices(folder());
    } catch (SettingsException unreadable) {
      Logger.warn("page: {}", unreadable.getMessage());
      return List.of();
    }
  }

  private static List<Choice> choices(ProcedureFolder folder) {
    List<Choice> choices = new ArrayList<>();
    for (LoadedProcedure loaded : folder.list()) {
      Procedure procedure = loaded.procedure();
      for (Pass pass : procedure.passes()) {
        choices.add(new Choice(procedure.id(), procedure.revision(), pass.name(), pass.windows()));
      }
    }
    return choices;
  }

  private ProcedureFolder folder() {
    return ProcedureFolder.read(settings.procedures().folder());
  }

  @Override
  public void signIn(String trainee, String procedureId, String pass) {
    try {
      Procedures.plan(folder().find(procedureId), pass, uncertainties());
    } catch (SettingsException refused) {
      throw new IllegalArgumentException(refused.getMessage(), refused);
    }
    SignIns.add(log, trainee, procedureId, pass, clock);
  }

  private ChannelUncertainties uncertainties() {
    ZonedDateTime now = Instant.ofEpochMilli(clock.epochMillis()).atZone(ZoneId.systemDefault());
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return settings.sensors(nominal, reader.calibrations(), now).uncertainties();
    }
  }

  @Override
  public void signOut() {
    SignIns.add(log, "", "", "", clock);
  }
}
