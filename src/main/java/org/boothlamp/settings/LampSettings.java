package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.Set;

/**
 * Where and how the signal is shown. Immutable.
 *
 * @param outputs at least one
 * @param redPulses true if red pulses at 1 Hz, for eyes that cannot tell red from green
 * @param gpio the pins; null if the file does not give them, never with {@link LampKind#GPIO}
 * @param traceFile file of the trace; null if not given, never with {@link LampKind#TRACE}
 */
public record LampSettings(
    Set<LampKind> outputs, boolean redPulses, GpioLampSettings gpio, Path traceFile) {

  public LampSettings {
    outputs = Set.copyOf(outputs);
  }
}
