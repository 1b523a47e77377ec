package org.boothlamp.sync;

import java.nio.file.Path;

/**
 * A folder that must exist, such as one on a stick. Immutable.
 *
 * @param folder the folder
 */
public record FolderTarget(Path folder) implements SyncTarget {

  @Override
  public String name() {
    return "folder " + folder.toAbsolutePath().normalize();
  }
}
