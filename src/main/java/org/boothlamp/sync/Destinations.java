package org.boothlamp.sync;

/** Picks what sends to a target. */
final class Destinations {

  private Destinations() {}

  static Destination of(SyncTarget target) {
    if (target instanceof FolderTarget folder) {
      return new FolderDestination(folder);
    }
    return new PostgresDestination((PostgresTarget) target);
  }
}
