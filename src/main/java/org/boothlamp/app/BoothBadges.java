package org.boothlamp.app;

import java.nio.file.Path;
import java.util.function.Function;
import org.boothlamp.acquisition.BadgeReader;
import org.boothlamp.acquisition.KeyboardBadges;
import org.boothlamp.acquisition.SerialBadges;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.SignIns;
import org.boothlamp.lamp.RefusalLamp;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BadgeSettings;
import org.boothlamp.settings.BadgeTableFile;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.ProcedureSettings;
import org.boothlamp.settings.TraineeCode;

/** What the booth does for the desk that reads badges. Safe to share. */
final class BoothBadges implements BadgeDesk.Booth {

  private final ProcedureSettings procedures;
  private final Path log;
  private final Monitor monitor;
  private final RefusalLamp lamp;
  private final BoothLogWriter writer;

  private BoothBadges(
      BoothSettings settings, Monitor monitor, RefusalLamp lamp, BoothLogWriter writer) {
    procedures = settings.procedures();
    log = writer.path();
    this.monitor = monitor;
    this.lamp = lamp;
    this.writer = writer;
  }

  /** The desk that the settings ask for; null if there is no reader. */
  static BadgeDesk desk(
      BoothSettings settings, Monitor monitor, RefusalLamp lamp, BoothLogWriter writer) {
    BadgeSettings badge = settings.badge();
    return badge == null
        ? null
        : new BadgeDesk(
            reader(badge),
            () -> table(badge),
            new BoothBadges(settings, monitor, lamp, writer),
            NanoClock.SYSTEM);
  }

  /** Refuses a table that cannot be read before anything runs. */
  static void requireReadable(BoothSettings settings) {
    if (settings.badge() != null) {
      table(settings.badge());
    }
  }

  private static BadgeReader reader(BadgeSettings badge) {
    String device = badge.device().toString();
    return badge.line() == null
        ? new KeyboardBadges(device)
        : SerialBadges.at(device, badge.line().baud(), badge.line().ending());
  }

  private static Function<String, String> table(BadgeSettings badge) {
    return badge.table() == null
        ? code -> TraineeCode.isOne(code) ? code : null
        : BadgeTableFile.read(badge.table())::traineeOf;
  }

  @Override
  public String signedIn() {
    return monitor.assigned().trainee();
  }

  /** To the default procedure of the settings, as the command does that names none. */
  @Override
  public void signIn(String trainee) {
    boolean out = trainee.isEmpty();
    SignIns.add(
        log,
        trainee,
        out ? "" : procedures.defaultProcedure(),
        out ? "" : procedures.defaultPass(),
        WallClock.SYSTEM);
  }

  @Override
  public void refuse() {
    lamp.refuse();
  }

  @Override
  public void note(EventKind kind, String detail) {
    writer.note(kind, detail);
  }

  @Override
  public void begin(EventKind kind, String detail) {
    writer.noteBegin(kind, detail);
  }

  @Override
  public void end(EventKind kind) {
    writer.noteEnd(kind, 0);
  }
}
