package org.boothlamp.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.settings.BadgeSettings;
import org.boothlamp.settings.BadgeTableFile;
import org.boothlamp.settings.Problem;
import org.boothlamp.settings.SettingsException;

/** What a check says of the badge reader. */
final class BadgeFindings {

  private static final String PART = "badge";

  private BadgeFindings() {}

  /**
   * The table of badges; nothing without one.
   *
   * @throws SettingsException if it is refused
   */
  static List<Finding> table(BadgeSettings badge) {
    if (badge == null || badge.table() == null) {
      return List.of();
    }
    int badges = BadgeTableFile.read(badge.table()).trainees().size();
    return List.of(Finding.good(PART, badge.table() + ", " + badges + " badges"));
  }

  /** The refusals of a table. */
  static List<Finding> refused(List<Problem> problems) {
    return problems.stream()
        .map(problem -> Finding.bad(PART, problem.what(), problem.nextMove()))
        .toList();
  }

  /** The reader; nothing if the settings name none. */
  static List<Finding> reader(BadgeSettings badge) {
    if (badge == null) {
      return List.of();
    }
    Path device = badge.device();
    if (!Files.exists(device)) {
      return List.of(
          Finding.bad(
              PART, device + " is not there", "plug the badge reader in, or correct its path"));
    }
    return List.of(
        Files.isReadable(device)
            ? Finding.good(PART, device + (badge.line() == null ? ", types" : ", serial"))
            : Finding.bad(
                PART,
                "this user may not read " + device,
                "add the user to the group that ls -lL " + device + " shows, and log in again"));
  }
}
