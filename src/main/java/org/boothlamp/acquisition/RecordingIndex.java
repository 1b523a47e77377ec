package org.boothlamp.acquisition;

import java.nio.file.Path;
import java.util.Map;

/** Which recording is of which segment, as of one look into their folder. Immutable. */
public final class RecordingIndex {

  /** A segment's start on the monotonic clock since a machine was switched on. */
  record Key(String machine, long startMonotonicNanos) {}

  private final Map<Key, Path> wavs;

  RecordingIndex(Map<Key, Path> wavs) {
    this.wavs = Map.copyOf(wavs);
  }

  /**
   * The recording of a segment; null if there is none.
   *
   * @param machineBoot the kernel's boot id at the time, or null where it told none
   * @param startMonotonicNanos the segment's start on the monotonic clock
   */
  public Path find(String machineBoot, long startMonotonicNanos) {
    return wavs.get(new Key(RecordingName.machine(machineBoot), startMonotonicNanos));
  }
}
