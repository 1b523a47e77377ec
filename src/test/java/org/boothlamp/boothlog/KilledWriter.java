package org.boothlamp.boothlog;

import java.nio.file.Path;

/**
 * The process that {@link BoothLogKillIT} kills. It welds for ever; after each 0.05 s it tells how
 * many finished segments the file is known to hold, how many it has welded, and how long the
 * running one is.
 */
final class KilledWriter {

  private KilledWriter() {}

  public static void main(String[] arguments) throws InterruptedException {
    Path path = Path.of(arguments[0]);
    RunningLog log = new RunningLog(path);
    LogPump pump = new LogPump(log.queue, 12, 90, 7, 45);
    RunningLog.secondsUntil(() -> log.writer.counters().commits > 0, 10);
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      long before = finishedIn(reader);
      while (true) {
        pump.runFor(0.05);
        long committed = finishedIn(reader) - before;
        System.out.println(committed + " " + pump.finished() + " " + pump.runningSeconds());
      }
    }
  }

  private static long finishedIn(BoothLogReader reader) {
    LogCounts counts = reader.counts();
    return counts.segments() - counts.openSegments();
  }
}
