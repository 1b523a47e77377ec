package org.boothlamp.page;

import org.boothlamp.report.RawRecording;

/** Where the raw recordings of runs are. Called from several threads. */
public interface RawRuns {

  /** A booth that keeps none. */
  RawRuns NONE = segment -> null;

  /**
   * The recording of a run.
   *
   * @param segment row number of its segment in the log
   * @return null if it was never kept, is gone, or cannot be read
   */
  RawRecording of(long segment);
}
