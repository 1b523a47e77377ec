package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.eventEnded;
import static org.boothlamp.testing.LogEntries.excursion;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.boothlamp.judging.Side;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.testing.WrittenCalibrations;

/** A log with all that a log can hold, and pages of it overwritten with noise. */
final class NoisyLog {

  static final int SEGMENTS = 600;

  private NoisyLog() {}

  /** Writes a log, some of whose traces take more than a page. */
  static void write(Path path) {
    try (WriterBench bench = new WriterBench(path)) {
      for (int i = 0; i < SEGMENTS; i++) {
        weld(bench, i);
      }
      for (int i = 0; i < 40; i++) {
        SignIns.add(path, "T" + i, "S-3F-18", "fill", () -> 1_000);
      }
    }
    WrittenCalibrations.write(path);
  }

  private static void weld(WriterBench bench, int number) {
    double start = 100 * number;
    bench.offer(started(start, "T" + number % 12));
    for (int i = 0; i < 60 + number % 100; i++) {
      bench.offer(point(start + i / 20.0));
    }
    bench.offer(excursion(start + 1, 1, Quantity.VOLTS, Side.HIGH, 27 + number / 1e3));
    bench.offer(progress(start, 3), ended(start, 8, SegmentEnd.ARC_OFF));
    bench.offer(touch(start + 50, 0.1, "T" + number % 12, number % 7 == 0));
    bench.offer(eventEnded(start + 60, 0.5, EventKind.LOST_PAIRS, number));
    bench.writer.step();
  }

  /**
   * Overwrites some pages.
   *
   * @return which, counting from 1
   */
  static Set<Integer> overwrite(Path path, int places, Random random) throws IOException {
    int pageSize = 4_096;
    int pages = (int) (Files.size(path) / pageSize);
    Set<Integer> noisy = new TreeSet<>();
    while (noisy.size() < places) {
      noisy.add(1 + random.nextInt(pages));
    }
    for (int page : noisy) {
      overwritePage(path, page, random);
    }
    return noisy;
  }

  static void overwritePage(Path path, int page, Random random) throws IOException {
    byte[] noise = new byte[4_096];
    random.nextBytes(noise);
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.WRITE)) {
      file.write(ByteBuffer.wrap(noise), (page - 1) * 4_096L);
    }
  }
}
