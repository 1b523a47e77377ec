package org.boothlamp.sync;

/** Where rows are sent. */
public sealed interface SyncTarget permits PostgresTarget, FolderTarget {

  /** For people, and to keep the marks of one target apart from those of another: no secrets. */
  String name();
}
