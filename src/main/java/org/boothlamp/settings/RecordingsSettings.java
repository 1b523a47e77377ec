package org.boothlamp.settings;

import java.nio.file.Path;
import org.boothlamp.acquisition.RecordingLimits;

/**
 * Raw recordings of the last segments. Immutable.
 *
 * @param folder where they are; not checked here
 * @param limits how much is kept
 */
public record RecordingsSettings(Path folder, RecordingLimits limits) {

  /** False if none are to be kept. */
  public boolean areKept() {
    return limits.keepBytes() > 0;
  }
}
