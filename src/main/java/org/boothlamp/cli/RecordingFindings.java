package org.boothlamp.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.acquisition.RecordingLimits;
import org.boothlamp.settings.RecordingsSettings;

/** What a check says of the raw recordings: writes none. */
final class RecordingFindings {

  private static final String PART = "recordings";
  private static final int BYTES_PER_PAIR = 4;
  private static final double SECONDS_PER_HOUR = 3_600;

  private final RecordingsSettings settings;
  private final RecordingFolder folder;
  private final int pairsPerSecond;

  /**
   * @param pairsPerSecond of the source; 0 if it was not heard
   */
  RecordingFindings(RecordingsSettings settings, RecordingFolder folder, int pairsPerSecond) {
    this.settings = settings;
    this.folder = folder;
    this.pairsPerSecond = pairsPerSecond;
  }

  /** One line, and one more if the disk is too small. */
  List<Finding> findings() {
    if (!settings.areKept()) {
      return List.of(
          Finding.note(PART, "none are kept: keep_mb = 0", "runs cannot be heard again later"));
    }
    Path existing = existing(folder.path().toAbsolutePath());
    if (!Files.isDirectory(existing) || !Files.isWritable(existing)) {
      return List.of(
          Finding.bad(
              PART,
              folder.path()
                  + " cannot be written: "
                  + existing
                  + " is "
                  + (Files.isDirectory(existing) ? "closed to this user" : "no folder"),
              "check its rights, or correct folder in [recordings]"));
    }
    try {
      return inFolder(existing);
    } catch (IOException failure) {
      return List.of(
          Finding.bad(PART, folder.path() + " cannot be read (" + failure + ")", "check the disk"));
    }
  }

  /** The folder itself, or what it will be made in. */
  private static Path existing(Path wanted) {
    Path path = wanted;
    while (!Files.exists(path)) {
      path = path.getParent();
    }
    return path;
  }

  private List<Finding> inFolder(Path existing) throws IOException {
    RecordingLimits limits = settings.limits();
    long held = folder.bytes();
    long free = Room.freeBytes(existing);
    long room = Math.max(0, held + free - limits.freeBytes());
    List<Finding> findings = new ArrayList<>();
    findings.add(
        Finding.good(
            PART,
            folder.path()
                + ", "
                + Room.words(held)
                + " now, at most "
                + Room.words(limits.keepBytes())
                + hours(limits.keepBytes())
                + ", "
                + Room.words(free)
                + " free on the disk"));
    if (room < limits.keepBytes()) {
      findings.add(tooSmall(room));
    }
    return findings;
  }

  private Finding tooSmall(long room) {
    RecordingLimits limits = settings.limits();
    String rest =
        "the disk has room for "
            + Room.words(room)
            + " of the "
            + Room.words(limits.keepBytes())
            + " of keep_mb, for free_mb leaves "
            + Room.words(limits.freeBytes())
            + " to the log";
    return room == 0
        ? Finding.bad(PART, rest + ": none is kept", "make room on that disk")
        : Finding.note(PART, rest + hours(room), "make room on that disk, or lower keep_mb");
  }

  private String hours(long bytes) {
    if (pairsPerSecond == 0) {
      return "";
    }
    double hours = bytes / (double) BYTES_PER_PAIR / pairsPerSecond / SECONDS_PER_HOUR;
    return String.format(Locale.ROOT, " (%.1f h of arc at %d pairs/s)", hours, pairsPerSecond);
  }
}
