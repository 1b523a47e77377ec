package org.boothlamp.settings;

/** Where the sample pairs come from. */
public sealed interface SourceSettings
    permits SerialSourceSettings, RecordingSourceSettings, SimulatedSourceSettings {}
