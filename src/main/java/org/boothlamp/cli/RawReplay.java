package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import org.boothlamp.acquisition.RawRun;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentKey;
import org.boothlamp.report.ArcSound;
import org.boothlamp.report.RawColumns;
import org.boothlamp.report.RawRecording;
import org.boothlamp.report.RawWindow;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShortSpell;
import org.boothlamp.report.ZoomText;
import org.boothlamp.signal.ShortCircuitRule;

/** The raw recording of a logged run: zoomed into, and as a sound. */
final class RawReplay {

  private static final ShortCircuitRule RULE =
      new ShortCircuitRule(ArcRule.STANDARD.shortCircuitVolts(), ArcRule.STANDARD.arcOffAmps());

  private final RawRecording recording;
  private final RunRecord run;
  private final Terminal terminal;

  private RawReplay(RawRecording recording, RunRecord run, Terminal terminal) {
    this.recording = recording;
    this.run = run;
    this.terminal = terminal;
  }

  /** The recording of a segment; throws PartsException if it is gone. */
  static RawReplay of(long segment, Path log, RecordingFolder folder, Terminal terminal) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      SegmentKey key = reader.segmentKey(segment);
      if (key == null) {
        throw new PartsException(
            log + ": there is no segment " + segment + "; boothlamp report lists the runs", null);
      }
      Path wav = folder.find(key.machineBoot(), key.startMonotonicNanos());
      if (wav == null) {
        throw new PartsException(
            "there is no raw recording of segment "
                + segment
                + " in "
                + folder.path()
                + "; it was deleted for room or age, or never kept: see keep_mb in [recordings]",
            null);
      }
      return new RawReplay(RawRun.open(wav), reader.weldReplay(segment).run(), terminal);
    }
  }

  /** From the start of the run to its end, s. */
  double[] wholeRun() {
    double end = Double.isNaN(run.lengthSeconds()) ? recording.endSeconds() : run.lengthSeconds();
    return new double[] {0, end};
  }

  /** Shows the seconds from one moment to another. */
  void zoom(double fromSeconds, double untilSeconds, FormatOption format) throws IOException {
    RawWindow window = RawWindow.of(recording, fromSeconds, untilSeconds);
    if (window == null) {
      throw new CommandFailedException(
          String.format(
              Locale.ROOT,
              "--zoom %s..%s holds nothing: the recording goes from %.3f to %.3f s",
              Wording.number(fromSeconds),
              Wording.number(untilSeconds),
              recording.startSeconds(),
              recording.endSeconds()));
    }
    int most = format.isJson() ? ZoomText.MOST_COLUMNS : ZoomText.columns(terminal.width());
    RawColumns columns = RawColumns.of(window, run.polarity(), most);
    List<ShortSpell> shorts = ShortSpell.in(window, RULE);
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      ZoomText.writeJson(columns, shorts, writer);
    } else {
      writer.print(ZoomText.render(columns, shorts, terminal.width()));
    }
    writer.flush();
  }

  /** Writes these seconds as a WAV file that must not exist yet. */
  void writeSound(Path file, double fromSeconds, double untilSeconds) throws IOException {
    RawWindow window = RawWindow.of(recording, fromSeconds, untilSeconds);
    if (window == null) {
      throw new CommandFailedException("the recording holds nothing to listen to there");
    }
    Files.write(file, ArcSound.wav(window), StandardOpenOption.CREATE_NEW);
    double longest = ArcSound.mostSeconds(recording);
    boolean cut = window.untilSeconds() - window.fromSeconds() > longest;
    terminal
        .out()
        .println(
            file
                + ": the sound of the arc"
                + (cut ? ", its first " + Math.round(longest) + " s" : ""));
  }
}
