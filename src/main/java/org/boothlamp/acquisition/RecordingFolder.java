package org.boothlamp.acquisition;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.RoomMaker;
import org.boothlamp.monitor.WallClock;
import org.tinylog.Logger;

/**
 * The folder of the raw recordings, and how much of it is kept: by bytes, by age, and never the
 * last of the disk's free space. The oldest go first, those since the machine was switched on last
 * and not by age, for a computer without a clock of its own may start in the past.
 *
 * <pre>
 * segment-20260302T070312450Z-1f0c9ad2-8812450031.wav       whole
 * segment-20260302T070312450Z-1f0c9ad2-8812450031.toml      its scale, gaps, trainee
 * segment-20260302T071544020Z-1f0c9ad2-9544020177.wav.part  being written
 * kept/                                                     kept on purpose: never deleted
 * </pre>
 *
 * <p>Safe to share: a file that another thread or process deletes meanwhile is only gone sooner.
 */
public final class RecordingFolder implements RoomMaker {

  private static final String KEPT = "kept";
  private static final double MILLIS_PER_DAY = 86_400_000.0;

  private record Held(RecordingName name, Path wav, long bytes) {}

  private final Path folder;
  private final RecordingLimits limits;
  private final WallClock wallClock;
  private volatile String presentMachine = "";

  /** A folder that need not exist yet. */
  public RecordingFolder(Path folder, RecordingLimits limits, WallClock wallClock) {
    this.folder = folder;
    this.limits = limits;
    this.wallClock = wallClock;
  }

  /** Where it is. */
  public Path path() {
    return folder;
  }

  RecordingLimits limits() {
    return limits;
  }

  /** From now on recordings since the machine was switched on are told from older ones. */
  void setPresentMachine(String machine) {
    presentMachine = machine;
  }

  /** Makes the folder, and gets the recordings that a power cut left half-written in order. */
  void prepare() throws IOException {
    makeIfMissing();
    for (Path part : list(RecordingName.PART)) {
      CutOffRecording.mend(part, finished(part));
    }
    for (Path sheet : list(RecordingName.SHEET)) {
      if (!Files.exists(sibling(sheet, RecordingName.WAV))) {
        Files.deleteIfExists(sheet);
      }
    }
  }

  void makeIfMissing() throws IOException {
    Files.createDirectories(folder);
  }

  private static Path finished(Path part) {
    return sibling(part, RecordingName.WAV);
  }

  private static Path sibling(Path file, String ending) {
    RecordingName name = RecordingName.of(file.getFileName().toString());
    return file.resolveSibling(name.stem() + ending);
  }

  private List<Path> list(String ending) throws IOException {
    return list(folder, ending);
  }

  private static List<Path> list(Path place, String ending) throws IOException {
    if (!Files.isDirectory(place)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(place)) {
      return files.filter(file -> isOurs(file, ending)).toList();
    } catch (UncheckedIOException unreadable) {
      throw unreadable.getCause();
    }
  }

  private static boolean isOurs(Path file, String ending) {
    String name = file.getFileName().toString();
    return name.endsWith(ending) && RecordingName.of(name) != null;
  }

  /** Whole recordings that may be deleted, the oldest first. */
  private List<Held> held() throws IOException {
    List<Held> held = new ArrayList<>();
    for (Path wav : list(RecordingName.WAV)) {
      RecordingName name = RecordingName.of(wav.getFileName().toString());
      held.add(new Held(name, wav, sizeOf(wav) + sizeOf(sibling(wav, RecordingName.SHEET))));
    }
    held.sort(
        Comparator.comparing(this::isOfPresentMachine)
            .thenComparing(one -> isOfPresentMachine(one) ? 0 : one.name().startWallMillis())
            .thenComparing(one -> one.name().startMonotonicNanos()));
    return held;
  }

  private boolean isOfPresentMachine(Held held) {
    return held.name().machine().equals(presentMachine);
  }

  /** A file that is gone meanwhile has no bytes. */
  private static long sizeOf(Path file) {
    try {
      return Files.size(file);
    } catch (IOException gone) {
      return 0;
    }
  }

  /**
   * Deletes what is beyond the limits.
   *
   * @param growingBytes size of the recording that is being written
   * @throws IOException if the folder cannot be read or a recording cannot be deleted
   * @throws SourceException if there is still too little room for another recording
   */
  void keepWithinLimits(long growingBytes) throws IOException {
    List<Held> held = held();
    long bytes = growingBytes + held.stream().mapToLong(Held::bytes).sum();
    for (Held oldest : held) {
      if (bytes > limits.keepBytes() || isTooOld(oldest) || freeBytes() < limits.freeBytes()) {
        delete(oldest);
        bytes -= oldest.bytes();
      }
    }
    refuseIfTooLarge(growingBytes);
    refuseIfFull();
  }

  private boolean isTooOld(Held held) {
    double ageMillis = wallClock.epochMillis() - (double) held.name().startWallMillis();
    return limits.keepDays() > 0
        && !isOfPresentMachine(held)
        && ageMillis > limits.keepDays() * MILLIS_PER_DAY;
  }

  private void refuseIfTooLarge(long growingBytes) {
    if (growingBytes > limits.keepBytes()) {
      throw new SourceException(
          Reason.FAILED,
          folder.toString(),
          "one segment's recording is larger than the "
              + limits.keepBytes()
              + " bytes that all may have",
          "raise keep_mb in [recordings]");
    }
  }

  private void refuseIfFull() throws IOException {
    long free = freeBytes();
    if (free < limits.freeBytes()) {
      throw new SourceException(
          Reason.FAILED,
          folder.toString(),
          "the disk has "
              + free
              + " bytes free, and recordings must leave "
              + limits.freeBytes()
              + " to the booth log",
          "make room on that disk, or lower free_mb in [recordings]");
    }
  }

  private long freeBytes() throws IOException {
    FileStore disk = Files.getFileStore(folder);
    return disk.getUsableSpace();
  }

  private static void delete(Held held) throws IOException {
    Files.deleteIfExists(held.wav());
    Files.deleteIfExists(sibling(held.wav(), RecordingName.SHEET));
  }

  @Override
  public boolean makeRoom(long bytes) {
    long freed = 0;
    try {
      for (Held oldest : held()) {
        if (freed >= bytes) {
          break;
        }
        delete(oldest);
        freed += oldest.bytes();
      }
    } catch (IOException failure) {
      Logger.warn("recordings {}: no room could be made: {}", folder, failure.toString());
    }
    return freed >= bytes;
  }

  /** Bytes of all recordings that may be deleted. */
  public long bytes() throws IOException {
    return held().stream().mapToLong(Held::bytes).sum();
  }

  /** All whole recordings as they are now, deletable or kept on purpose, to be asked for many. */
  public RecordingIndex index() {
    Map<RecordingIndex.Key, Path> wavs = new HashMap<>();
    for (Path place : List.of(folder, folder.resolve(KEPT))) {
      for (Path wav : wholeIn(place)) {
        RecordingName name = RecordingName.of(wav.getFileName().toString());
        wavs.put(new RecordingIndex.Key(name.machine(), name.startMonotonicNanos()), wav);
      }
    }
    return new RecordingIndex(wavs);
  }

  /** The recording of one segment, see {@link RecordingIndex#find}. */
  public Path find(String machineBoot, long startMonotonicNanos) {
    return index().find(machineBoot, startMonotonicNanos);
  }

  /** None where the folder cannot be read: then nothing is found there. */
  private static List<Path> wholeIn(Path place) {
    try {
      return list(place, RecordingName.WAV);
    } catch (IOException unreadable) {
      Logger.warn("recordings {}: cannot be read: {}", place, unreadable.toString());
      return List.of();
    }
  }

  /** Where a recording that has just begun is written. */
  Path part(RecordingName name) {
    return folder.resolve(name.stem() + RecordingName.PART);
  }

  Path sheet(RecordingName name) {
    return folder.resolve(name.stem() + RecordingName.SHEET);
  }

  /** Gives a recording that is complete its name; it is there for good when this returns. */
  void publish(RecordingName name) throws IOException {
    Files.move(part(name), folder.resolve(name.wav()), StandardCopyOption.ATOMIC_MOVE);
  }

  /** Takes a recording back that did not become one. */
  void discard(RecordingName name) throws IOException {
    Files.deleteIfExists(part(name));
    Files.deleteIfExists(sheet(name));
  }

  /**
   * Keeps a recording on purpose: it no longer counts to the limits and is never deleted.
   *
   * @return where it is now
   * @throws SourceException if it cannot be moved
   */
  public Path keep(Path wav) {
    Path kept = folder.resolve(KEPT).resolve(wav.getFileName());
    if (wav.equals(kept)) {
      return kept;
    }
    try {
      Files.createDirectories(kept.getParent());
      Path sheet = RecordingScale.fileBeside(wav);
      Files.move(sheet, RecordingScale.fileBeside(kept), StandardCopyOption.ATOMIC_MOVE);
      Files.move(wav, kept, StandardCopyOption.ATOMIC_MOVE);
      return kept;
    } catch (IOException failure) {
      throw unkept(wav, failure);
    }
  }

  /**
   * Copies a recording to where somebody wants it, with its scale.
   *
   * @throws SourceException if it cannot be copied, or {@code to} exists
   */
  public static void copy(Path wav, Path to) {
    try {
      Files.copy(RecordingScale.fileBeside(wav), RecordingScale.fileBeside(to));
      Files.copy(wav, to);
    } catch (IOException failure) {
      throw unkept(wav, failure);
    }
  }

  private static SourceException unkept(Path wav, IOException failure) {
    return new SourceException(
        Reason.FAILED,
        wav.toString(),
        "the recording could not be kept: " + failure,
        "check the folder, its permissions and the free space, and that the new name is free",
        failure);
  }
}
