package org.boothlamp.app;

import java.nio.file.Path;
import org.boothlamp.acquisition.RawRun;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentKey;
import org.boothlamp.page.RawRuns;
import org.boothlamp.report.RawRecording;
import org.tinylog.Logger;

/** Raw recordings of the booth's own runs, looked for anew each time. Safe to share. */
record BoothRawRuns(Path log, RecordingFolder folder) implements RawRuns {

  @Override
  public RawRecording of(long segment) {
    SegmentKey key;
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      key = reader.segmentKey(segment);
    }
    return key == null ? null : open(folder.find(key.machineBoot(), key.startMonotonicNanos()));
  }

  private static RawRecording open(Path wav) {
    try {
      return wav == null ? null : RawRun.open(wav);
    } catch (SourceException unreadable) {
      Logger.warn("page: {}", unreadable.getMessage());
      return null;
    }
  }
}
