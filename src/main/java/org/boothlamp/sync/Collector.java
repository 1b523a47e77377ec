package org.boothlamp.sync;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.boothlamp.boothlog.CollectedLog;
import org.boothlamp.boothlog.LogRows;

/**
 * Reads any number of folders into one log. Whatever is damaged is refused by its name, and all
 * else is collected; reading the same folders again changes nothing. Confined to one thread.
 */
public final class Collector {

  /**
   * A batch that was not collected. Immutable.
   *
   * @param file the batch
   * @param why what is wrong with it, and the next move
   */
  public record Refusal(Path file, String why) {}

  /**
   * What was done. Immutable.
   *
   * @param batches batches found whole
   * @param newBatches those that had not been collected before
   * @param newRows rows with a number of their own that are new
   * @param refusals batches that are not in
   */
  public record Result(int batches, int newBatches, int newRows, List<Refusal> refusals) {

    public Result {
      refusals = List.copyOf(refusals);
    }
  }

  private static final long LARGEST_BYTES = 256L << 20;

  private final CollectedLog log;
  private final List<Refusal> refusals = new ArrayList<>();
  private int batches;
  private int newBatches;
  private int newRows;

  private Collector(CollectedLog log) {
    this.log = log;
  }

  /**
   * Collects folders, and those inside them, into a log.
   *
   * @throws IOException if a folder cannot be read
   */
  public static Result collect(List<Path> folders, CollectedLog into) throws IOException {
    Collector collector = new Collector(into);
    for (Path batch : batchesIn(folders)) {
      collector.collect(batch);
    }
    into.correctTimes();
    into.forget();
    return new Result(
        collector.batches, collector.newBatches, collector.newRows, collector.refusals);
  }

  /** Starts of monitors come before the rows that refer to them. */
  private static List<Path> batchesIn(List<Path> folders) throws IOException {
    List<Path> found = new ArrayList<>();
    for (Path folder : folders) {
      try (Stream<Path> files = Files.walk(folder)) {
        files
            .filter(file -> file.getFileName().toString().endsWith(FolderDestination.ENDING))
            .forEach(found::add);
      }
    }
    found.sort(
        Comparator.comparing(Collector::order)
            .thenComparing(file -> file.getFileName().toString()));
    return found;
  }

  private static int order(Path batch) {
    List<String> tables = LogRows.tables();
    for (int i = 0; i < tables.size(); i++) {
      if (batch.getFileName().toString().contains("-" + tables.get(i) + "-")) {
        return i;
      }
    }
    return tables.size();
  }

  private void collect(Path file) {
    try {
      byte[] content = checked(file);
      batches++;
      String name = file.getFileName().toString();
      if (!log.has(name)) {
        Batch batch = BatchJson.read(new GZIPInputStream(new ByteArrayInputStream(content)));
        newRows += log.add(name, batch.booth(), batch.log(), batch.groups());
        newBatches++;
      }
    } catch (IOException | IllegalArgumentException damaged) {
      refusals.add(new Refusal(file, damaged.getMessage()));
    }
  }

  private static byte[] checked(Path file) throws IOException {
    Path sumFile = file.resolveSibling(file.getFileName() + FolderDestination.SUM_ENDING);
    if (!Files.exists(sumFile)) {
      throw new IOException(
          "its sum, "
              + sumFile.getFileName()
              + ", is not beside it; copy it too, or let the booth sync into the folder again");
    }
    if (Files.size(file) > LARGEST_BYTES) {
      throw new IOException("is far larger than any batch; check what it is");
    }
    byte[] content = Files.readAllBytes(file);
    String expected = Sha256.ofLine(Files.readString(sumFile, StandardCharsets.ISO_8859_1));
    if (!Sha256.of(content).equals(expected)) {
      throw new IOException(
          "is damaged: its SHA-256 is "
              + Sha256.of(content)
              + " and not "
              + expected
              + "; copy it again from the stick");
    }
    return content;
  }
}
