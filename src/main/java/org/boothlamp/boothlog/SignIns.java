package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;

/** Signs a trainee in from a short command, while the monitor runs or before it starts. */
public final class SignIns {

  private static final String INSERT =
      "INSERT INTO sign_in (wall_ms, trainee, procedure_id, pass, mono_ns, machine_boot)"
          + " VALUES (?, ?, ?, ?, ?, ?)";

  private SignIns() {}

  /**
   * Writes one sign-in, in a transaction of its own; waits up to 5 s for other writers. A running
   * monitor notices it within a second.
   *
   * @param trainee trainee code; empty signs out
   * @param procedureId procedure, or empty
   * @param pass pass name, or empty
   * @return the row as written
   * @throws BoothLogException if the log cannot be opened or written
   */
  public static SignIn add(
      Path path, String trainee, String procedureId, String pass, WallClock clock) {
    try (LogConnection log = LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS)) {
      return insert(log, trainee, procedureId, pass, clock.epochMillis());
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private static SignIn insert(
      LogConnection log, String trainee, String procedureId, String pass, long wallMillis)
      throws SQLException {
    log.bind(INSERT)
        .whole(wallMillis)
        .text(trainee)
        .text(procedureId)
        .text(pass)
        .whole(NanoClock.SYSTEM.nanoTime())
        .text(BootRow.machineBootNow())
        .run();
    long id = log.number("SELECT last_insert_rowid()");
    return new SignIn(id, wallMillis, trainee, procedureId, pass);
  }
}
