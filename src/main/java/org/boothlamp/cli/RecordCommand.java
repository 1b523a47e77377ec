package org.boothlamp.cli;

import java.io.Closeable;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.boothlamp.acquisition.Recording;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.acquisition.RecordingScale;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentKey;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.JsonLines;
import org.boothlamp.settings.BoothSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Keeps raw counts on purpose. */
@Command(
    name = "record",
    header = "Keeps a raw recording on purpose: of a segment, or of the next seconds.",
    description = {
      "The monitor keeps the last segments at full rate and deletes the oldest. With --segment one of"
          + " them is kept for good: in the folder kept/ beside the others, or copied to --out. Its number"
          + " is the id of the run in report --format json. The monitor may run meanwhile.",
      "",
      "Without --segment the source itself is recorded, while no monitor runs.",
      "",
      "A recording is a two-channel 16-bit WAV file (channel 1 current counts, channel 2 voltage counts)"
          + " with its scale in NAME.toml beside it; boothlamp replay plays it.",
      "",
      "Examples:",
      "  boothlamp record --segment 17",
      "  boothlamp record --segment 17 --out cold-start.wav",
      "  boothlamp record --seconds 60 --out hum.wav"
    })
final class RecordCommand implements Callable<Integer> {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final int DEFAULT_SECONDS = 60;
  private static final int LONGEST_SECONDS = 36_000;

  private final Parts parts;
  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private SettingsOption settingsOption;
  @Mixin private FormatOption format;

  @Option(
      names = "--segment",
      paramLabel = "ID",
      description = "Keep the recording of this run of the booth log.")
  private Long segment;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      description = "How long to record the source, 1 to 36000 s. Default: 60.")
  private Integer seconds;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "NAME.wav",
      description =
          "Where to. It must not exist yet. Default: BOOTH-TIME.wav in this folder; with --segment the"
              + " folder kept/.")
  private Path out;

  RecordCommand(Parts parts, Terminal terminal) {
    this.parts = parts;
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    checkUsage();
    BoothSettings settings = settingsOption.read();
    if (segment != null) {
      keepSegment(settings);
    } else {
      recordSource(settings);
    }
    return ExitCode.OK;
  }

  private void checkUsage() {
    if (segment != null && seconds != null) {
      throw usage("--segment keeps what is recorded already: leave --seconds away");
    }
    if (seconds != null && (seconds < 1 || seconds > LONGEST_SECONDS)) {
      throw usage("--seconds must be from 1 to " + LONGEST_SECONDS + ", but is " + seconds);
    }
    if (out != null && !out.getFileName().toString().endsWith(".wav")) {
      throw usage("--out must be the name of a .wav file, but is " + out);
    }
    if (out != null) {
      refuseExisting(out);
      refuseExisting(RecordingScale.fileBeside(out));
    }
  }

  private void refuseExisting(Path file) {
    if (Files.exists(file)) {
      throw usage(file + " is there already: choose another name with --out, or move it away");
    }
  }

  private ParameterException usage(String what) {
    return new ParameterException(spec.commandLine(), what);
  }

  private void keepSegment(BoothSettings settings) throws IOException {
    Path wav = find(settings);
    Path kept = out;
    if (out == null) {
      kept = parts.recordings(settings).keep(wav);
    } else {
      RecordingFolder.copy(wav, out);
    }
    write(kept, missingPairs(kept));
  }

  private static long missingPairs(Path wav) {
    return Recording.open(wav).missingPairs();
  }

  private Path find(BoothSettings settings) {
    SegmentKey key = keyOf(SettingsOption.logOf(settings));
    if (key == null) {
      throw refused("the booth log has no segment " + segment, "boothlamp report lists the runs");
    }
    if (key.running()) {
      throw refused("segment " + segment + " is still being welded", "try again after its end");
    }
    RecordingFolder folder = parts.recordings(settings);
    Path wav = folder.find(key.machineBoot(), key.startMonotonicNanos());
    if (wav == null) {
      throw refused(
          "there is no recording of segment " + segment + " in " + folder.path(),
          "it was deleted for room or age, or never kept: see keep_mb in [recordings]");
    }
    return wav;
  }

  private SegmentKey keyOf(Path log) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.segmentKey(segment);
    }
  }

  private static PartsException refused(String what, String nextMove) {
    return new PartsException(what + "; " + nextMove, null);
  }

  private void recordSource(BoothSettings settings) throws IOException {
    Path log = SettingsOption.logOf(settings);
    Closeable lock = keepMonitorsOut(log);
    try {
      record(settings);
    } finally {
      lock.close();
    }
  }

  private static Closeable keepMonitorsOut(Path log) {
    try {
      return BoothLog.keepMonitorsOut(log);
    } catch (BoothLogException failure) {
      throw new PartsException(
          failure.getMessage()
              + "; while a monitor runs, record --segment ID keeps one of its own recordings",
          failure);
    }
  }

  private void record(BoothSettings settings) throws IOException {
    Path wav = out == null ? defaultName(settings) : out;
    refuseExisting(wav);
    int length = seconds == null ? DEFAULT_SECONDS : seconds;
    SourceRecording recording = new SourceRecording(wav, length, NanoClock.SYSTEM);
    Parts.Recording recordable = parts.recordable(settings);
    try (SampleSource source = recordable.source()) {
      recording.record(source, recordable.scale());
    }
    write(wav, recording.missingPairs());
  }

  private static Path defaultName(BoothSettings settings) {
    String time = TIME.format(Instant.ofEpochMilli(WallClock.SYSTEM.epochMillis()));
    return Path.of(settings.boothId() + "-" + time + ".wav");
  }

  private void write(Path wav, long missingPairs) throws IOException {
    Recording recording = Recording.open(wav);
    PrintWriter writer = terminal.writer();
    double length = (double) recording.pairs() / recording.pairsPerSecond();
    if (format.isJson()) {
      JsonLines json = new JsonLines(writer);
      json.start("recording").text("file", wav.toString());
      json.count("pairs_per_second", recording.pairsPerSecond()).count("pairs", recording.pairs());
      json.number("length_s", length).count("missing_pairs", missingPairs).end();
      json.flush();
    } else {
      writer.printf(
          Locale.ROOT,
          "%s: %.1f s, %d pairs a second%s%n",
          wav,
          length,
          recording.pairsPerSecond(),
          missingPairs > 0 ? ", " + missingPairs + " pairs missing" : "");
    }
    writer.flush();
  }
}
