package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;

import java.nio.file.Path;
import org.boothlamp.boothlog.WriterBench.MachineClock;
import org.boothlamp.monitor.SegmentEnd;

/** The log of a booth whose clock stands in 1970 until somebody sets it. */
public final class LateClockLog implements AutoCloseable {

  /** Its booth. */
  public static final String BOOTH = "booth-3";

  private final MachineClock machine = new MachineClock(0);
  private final WriterBench bench;
  private double seconds;

  public LateClockLog(Path path) {
    bench = WriterBench.withMachineClock(path, machine);
  }

  /** A run of 5 s and a touch, in the file when this returns. */
  public void weld() {
    seconds += 10;
    bench.offer(started(seconds, "T-04"), ended(seconds, 5, SegmentEnd.ARC_OFF));
    bench.offer(touch(seconds + 6, 0.1, "T-04", false));
    bench.settleFor(2);
  }

  /** The network has come. */
  public void setClock() {
    machine.moveMillis(FIRST_WALL_MILLIS);
    machine.trusted = true;
    bench.settleFor(2);
  }

  @Override
  public void close() {
    bench.close();
  }
}
