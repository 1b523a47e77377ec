package org.boothlamp.settings;

/** Where the sample pairs come from. */
public sealed interface SourceSettings
    permits SerialSourceSettings,
        SpiSourceSettings,
        I2cSourceSettings,
        IioSourceSettings,
        RecordingSourceSettings,
        SimulatedSourceSettings {}
