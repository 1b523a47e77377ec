package org.boothlamp.settings;

import org.boothlamp.sync.SyncTarget;

/**
 * Sending rows elsewhere. Immutable.
 *
 * @param target where to
 * @param everySeconds pause between two rounds
 */
public record SyncSettings(SyncTarget target, double everySeconds) {}
