package org.boothlamp.settings;

import java.nio.file.Path;

/**
 * A recording, which brings its own scales. Immutable.
 *
 * @param file WAV file; not checked here
 * @param pace how fast it is delivered
 */
public record RecordingSourceSettings(Path file, Pace pace) implements SourceSettings {}
