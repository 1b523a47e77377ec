package org.boothlamp.settings;

import java.nio.file.Path;
import org.boothlamp.acquisition.BadgeEnding;

/**
 * The reader that trainees sign in with. Immutable.
 *
 * @param device port or input device
 * @param line how it sends on a serial line; null if it types like a keyboard
 * @param table whose badge is whose; null if a badge's code is the trainee code itself
 */
public record BadgeSettings(Path device, SerialLineSettings line, Path table) {

  /**
   * A serial line to a reader. Immutable.
   *
   * @param baud line speed, 1200 to 4000000
   * @param ending what comes after a code
   */
  public record SerialLineSettings(int baud, BadgeEnding ending) {}
}
