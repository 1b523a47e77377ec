package org.boothlamp.sync;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;

/**
 * Writes each batch as a file that never changes: its sum first, then the batch, each beside its
 * place, synced to the medium and then renamed. A batch without its sum, or with another one, is no
 * batch, so a medium that is pulled at any moment holds nothing half-believed.
 *
 * <pre>
 *  B-07-9f3c-segment-00000001-00000250-5d41402a.jsonl.gz
 *  B-07-9f3c-segment-00000001-00000250-5d41402a.jsonl.gz.sha256
 *  booth log  table  first    last     sum
 * </pre>
 *
 * <p>The folder is never made: where a stick is not plugged in, its place would fill up instead.
 */
final class FolderDestination implements Destination {

  /** End of a batch's name. */
  static final String ENDING = ".jsonl.gz";

  /** End of the name of its sum. */
  static final String SUM_ENDING = ".sha256";

  /** End of a name while the file is being written. */
  static final String PART_ENDING = ".part";

  private static final int SHORT = 8;

  private final FolderTarget target;

  FolderDestination(FolderTarget target) {
    this.target = target;
  }

  @Override
  public SyncTarget target() {
    return target;
  }

  @Override
  public void open() throws SyncException {
    if (!Files.isDirectory(target.folder())) {
      throw SyncException.later(
          "the folder " + target.folder() + " is not there",
          "plug the stick in or mount the share, and make that folder on it once",
          null);
    }
  }

  @Override
  public void send(Batch batch) throws SyncException {
    open();
    byte[] content = compressed(batch);
    String sum = Sha256.of(content);
    String name = name(batch, sum);
    Path place = target.folder().resolve(name);
    try {
      if (isThere(place, sum)) {
        return;
      }
      byte[] sumLine = Sha256.line(sum, name).getBytes(StandardCharsets.UTF_8);
      writeWhole(target.folder().resolve(name + SUM_ENDING), sumLine);
      writeWhole(place, content);
    } catch (IOException failure) {
      throw SyncException.later(
          "the folder " + target.folder() + " does not take files (" + failure + ")",
          "check its free space, its rights and the medium",
          failure);
    }
  }

  private static String name(Batch batch, String sum) {
    return String.format(
        Locale.ROOT,
        "%s-%s-%s-%08d-%08d-%s%s",
        batch.booth(),
        batch.log().substring(0, Math.min(SHORT, batch.log().length())),
        batch.table(),
        batch.firstId(),
        batch.lastId(),
        sum.substring(0, SHORT),
        ENDING);
  }

  /** The same rows give the same bytes, and so the same name. */
  private static byte[] compressed(Batch batch) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
      BatchJson.write(batch, gzip);
    } catch (IOException impossible) {
      throw new IllegalStateException("memory refused bytes", impossible);
    }
    return bytes.toByteArray();
  }

  private static boolean isThere(Path place, String sum) throws IOException {
    Path sumFile = place.resolveSibling(place.getFileName() + SUM_ENDING);
    return Files.exists(place)
        && Files.exists(sumFile)
        && Sha256.ofLine(Files.readString(sumFile, StandardCharsets.ISO_8859_1)).equals(sum)
        && Sha256.of(Files.readAllBytes(place)).equals(sum);
  }

  private static void writeWhole(Path place, byte[] content) throws IOException {
    Path part = place.resolveSibling(place.getFileName() + PART_ENDING);
    try (FileChannel file =
        FileChannel.open(
            part,
            StandardOpenOption.CREATE,
            StandardOpenOption.WRITE,
            StandardOpenOption.TRUNCATE_EXISTING)) {
      ByteBuffer bytes = ByteBuffer.wrap(content);
      while (bytes.hasRemaining()) {
        file.write(bytes);
      }
      file.force(true);
    }
    Files.move(part, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    syncFolder(place.getParent());
  }

  private static void syncFolder(Path folder) throws IOException {
    try (FileChannel names = FileChannel.open(folder, StandardOpenOption.READ)) {
      names.force(true);
    }
  }

  @Override
  public void close() {
    // nothing is kept open
  }
}
