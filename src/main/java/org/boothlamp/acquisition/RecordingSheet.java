package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.signal.PairScale;

/**
 * All that the file beside a recording says: the scale, where pairs are missing, and what was
 * welded. Immutable.
 *
 * <pre>
 * [[gap]]              # none, one or many, in order
 * first_pair = 1200    # counted from 0; its place in the WAV file holds zero_count
 * pairs = 34
 *
 * [segment]            # may be missing
 * contact_pair = 2500  # place of the first pair with current; the rest is for people
 * </pre>
 *
 * @param scale what the counts mean
 * @param gaps in order, none touching the other
 * @param segmentToml the table {@code [segment]} as it stands in the file, or empty
 * @param contactPair place of the first pair with current; -1 if it is not said
 */
record RecordingSheet(PairScale scale, List<PairGap> gaps, String segmentToml, long contactPair) {

  static final long NOT_SAID = -1;

  RecordingSheet {
    gaps = List.copyOf(gaps);
  }

  /** The sheet of a recording without gaps. */
  static RecordingSheet of(PairScale scale) {
    return new RecordingSheet(scale, List.of(), "", NOT_SAID);
  }

  RecordingSheet withGaps(List<PairGap> others) {
    return new RecordingSheet(scale, others, segmentToml, contactPair);
  }

  /**
   * Writes the file, replacing an old one.
   *
   * @throws SourceException if it cannot be written
   */
  void write(Path file) {
    StringBuilder text = new StringBuilder(RecordingScale.toToml(scale));
    for (PairGap gap : gaps) {
      text.append("\n[[gap]]\nfirst_pair = ").append(gap.firstPair());
      text.append("\npairs = ").append(gap.pairs()).append('\n');
    }
    try {
      Files.writeString(file, text.append(segmentToml));
    } catch (IOException unwritable) {
      throw new SourceException(
          Reason.FAILED,
          file.toString(),
          "the scale file could not be written: " + unwritable.getMessage(),
          "check the folder, its permissions and the free space",
          unwritable);
    }
  }
}
