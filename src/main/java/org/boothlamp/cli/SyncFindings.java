package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.sync.FolderTarget;
import org.boothlamp.sync.PostgresRights;
import org.boothlamp.sync.PostgresTarget;
import org.boothlamp.sync.SyncException;
import org.boothlamp.sync.SyncState;
import org.boothlamp.sync.SyncStatus;
import org.boothlamp.sync.SyncTarget;
import org.boothlamp.sync.Syncer;

/** What a check says of where rows are sent; sends none. */
final class SyncFindings {

  private static final String PART = "sync";
  private static final String ROLES = "let its owner run roles.sql of deploy/postgresql";

  private final BoothSettings settings;
  private final SyncTarget target;
  private final List<Finding> findings = new ArrayList<>();

  /** To be made only of settings that send rows. */
  SyncFindings(BoothSettings settings) {
    this.settings = settings;
    target = settings.sync().target();
  }

  /** What the settings alone say. */
  List<Finding> ofSettings() {
    if (target instanceof PostgresTarget database && database.isOpenToOthers()) {
      findings.add(
          Finding.note(
              PART,
              "tls = false: rows go to " + database.host() + " for everybody on the way to read",
              "remove tls = false from [sync]; the server needs a certificate"));
    }
    return List.copyOf(findings);
  }

  /** The same, and what the target and the log say. */
  List<Finding> all() {
    ofSettings();
    try {
      if (target instanceof PostgresTarget database) {
        addDatabase(database, PostgresRights.ask(database));
      } else {
        addFolder(((FolderTarget) target).folder());
      }
      addBacklog();
    } catch (SyncException failure) {
      findings.add(Finding.bad(PART, failure.what(), failure.nextMove()));
    }
    return List.copyOf(findings);
  }

  private void addDatabase(PostgresTarget database, PostgresRights rights) {
    findings.add(
        Finding.good(
            PART, database.name() + " is reached as " + database.user() + ", has its tables"));
    if (!rights.lacking().isEmpty()) {
      findings.add(
          Finding.bad(PART, "the role may not add rows to " + list(rights.lacking()), ROLES));
    }
    if (!rights.beyond().isEmpty()) {
      findings.add(
          Finding.note(
              PART,
              "the role may read, change or remove rows of " + list(rights.beyond()),
              "take those rights away: a booth needs to add rows and no more"));
    }
    addRowSecurity(database, rights);
  }

  private void addRowSecurity(PostgresTarget database, PostgresRights rights) {
    String own = "booth-" + settings.boothId();
    if (!rights.open().isEmpty()) {
      findings.add(
          Finding.note(
              PART,
              "any booth may add rows in another's name to " + list(rights.open()),
              "let its owner run row-security.sql of deploy/postgresql"));
    } else if (!database.user().equals(own) && rights.beyond().isEmpty()) {
      findings.add(
          Finding.bad(
              PART,
              "role " + database.user() + " may add no rows of booth " + settings.boothId(),
              "log in as " + own));
    }
  }

  private static String list(List<String> tables) {
    return String.join(", ", tables);
  }

  private void addFolder(Path folder) {
    if (!Files.isDirectory(folder)) {
      findings.add(
          Finding.note(
              PART,
              "the folder " + folder + " is not there; rows wait until it is",
              "plug the stick in or mount the share, and make that folder on it once"));
    } else if (!Files.isWritable(folder)) {
      findings.add(
          Finding.bad(PART, "the folder " + folder + " cannot be written", "check its rights"));
    } else {
      findings.add(Finding.good(PART, "folder " + folder + room(folder)));
    }
  }

  private static String room(Path folder) {
    try {
      return ", " + Room.words(Room.freeBytes(folder)) + " free";
    } catch (IOException notTold) {
      return "";
    }
  }

  private void addBacklog() throws SyncException {
    Path log = SettingsOption.logOf(settings);
    if (!Files.exists(log) || !Files.exists(log.resolveSibling(SyncState.FILE_NAME))) {
      findings.add(Finding.good(PART, "nothing was sent yet"));
      return;
    }
    try (Syncer syncer = Syncer.open(log, settings.boothId(), target, WallClock.SYSTEM)) {
      addBacklog(syncer.status());
    }
  }

  private void addBacklog(SyncStatus status) {
    String waiting = SyncStatusText.waiting(status);
    String since = "all were sent last: " + SyncStatusText.time(status.lastSuccessWallMillis());
    findings.add(
        status.failure().isEmpty()
            ? Finding.good(PART, "waiting: " + waiting + "; " + since)
            : Finding.note(
                PART,
                "waiting: " + waiting + "; " + since + "; the last try failed: " + status.failure(),
                status.nextMove()));
    if (!status.setAside().isEmpty()) {
      findings.add(
          Finding.bad(
              PART,
              status.setAside().size() + " rows are refused and set aside",
              "boothlamp sync --status says why"));
    }
  }
}
