package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.tinylog.Logger;

/**
 * Pairs from a converter that the kernel drives as an industrial-I/O device with a triggered
 * buffer: the kernel converts at the trigger's pace and stamps each pair, so a busy machine delays
 * pairs but does not lose them.
 *
 * <pre>
 *   /dev/iio:deviceN -> ScanReader (own thread) -> ScanLayout -> StampIndex -> SampleBlock
 * </pre>
 *
 * <p>A read looks for pairs every 3 ms. A device that fails or goes away delivers nothing and is
 * set up again every 0.5 s. Creates no objects while all is well.
 *
 * <p>Confined to one thread, but {@link #trouble} and {@link #performance} may be asked from any.
 */
public final class IioSource implements SampleSource {

  private static final long POLL_NANOS = 3_000_000L;
  private static final long RETRY_NANOS = 500_000_000L;

  /** Leaves a fifth of the longest wait to the scheduler. */
  private static final long WAIT_NANOS = LONGEST_WAIT_NANOS / 5 * 4;

  /** How far the rate may be off, part of it. */
  private static final double HELD = 0.02;

  /** Opens the device file; a test hands in a pipe. */
  interface Opener {

    ReadableByteChannel open(Path file) throws IOException;
  }

  private final IioBuffer buffer;
  private final Opener opener;
  private final NanoClock clock;
  private final Pause pause;
  private final int pairsPerSecond;
  private final String name;
  private final StampIndex stampIndex;
  private final SamplingJitter jitter;
  private final SourceCounters counters = new SourceCounters();

  private ScanLayout layout;
  private byte[] scan;
  private volatile SourceFormat format;

  /** Null while the device is not open. */
  private ScanReader reader;

  private boolean tried;
  private long lastTryNanos;
  private boolean unproven;
  private boolean seen;
  private boolean closed;

  /** A pair taken and not delivered yet, because a gap lies before it. */
  private boolean waiting;

  private long waitingIndex;
  private volatile SourceException failure;

  IioSource(
      IioAddress address,
      ChannelPair channels,
      int pairsPerSecond,
      Opener opener,
      NanoClock clock,
      Pause pause) {
    this.opener = opener;
    this.clock = clock;
    this.pause = pause;
    this.pairsPerSecond = pairsPerSecond;
    buffer = new IioBuffer(address, channels, pairsPerSecond);
    stampIndex = new StampIndex(pairsPerSecond);
    jitter = new SamplingJitter(pairsPerSecond);
    name = "industrial-I/O device \"" + address.name() + "\"";
  }

  /** A device below a root; not opened before the first read. */
  public static IioSource at(IioAddress address, ChannelPair channels, int pairsPerSecond) {
    return new IioSource(
        address,
        channels,
        pairsPerSecond,
        file -> FileChannel.open(file, StandardOpenOption.READ),
        NanoClock.SYSTEM,
        Pause.SYSTEM);
  }

  /**
   * Opens the device now, before the first read, to learn whether it can be.
   *
   * @throws SourceException if it cannot, with the next move
   */
  public void open() {
    tryToOpen();
    if (failure != null) {
      throw failure;
    }
  }

  @Override
  public Outcome read(SampleBlock block) {
    block.count = 0;
    if (closed) {
      block.monotonicNanos = clock.nanoTime();
      return Outcome.END;
    }
    if (isOpen()) {
      awaitPairs(block);
    } else {
      pause.pauseNanos(WAIT_NANOS);
    }
    counters.lostPairs = stampIndex.lostPairs();
    block.monotonicNanos = clock.nanoTime();
    return block.count > 0 ? Outcome.PAIRS : Outcome.NOTHING;
  }

  private boolean isOpen() {
    boolean due = !tried || clock.nanoTime() - lastTryNanos >= RETRY_NANOS;
    if (reader == null && due) {
      tryToOpen();
    }
    return reader != null;
  }

  private void tryToOpen() {
    tried = true;
    lastTryNanos = clock.nanoTime();
    try {
      layout = buffer.start();
      scan = new byte[layout.bytes()];
      ReadableByteChannel channel = opener.open(buffer.deviceFile());
      reader = new ScanReader(channel, layout.bytes(), buffer.readScans(), pairsPerSecond);
      learnFormat();
      unproven = true;
    } catch (SourceException refused) {
      buffer.stop();
      tell(refused);
    } catch (IOException refused) {
      buffer.stop();
      tell(unreadable(Causes.words(refused)));
    }
  }

  private void learnFormat() {
    SourceFormat now =
        new SourceFormat(pairsPerSecond, layout.lowestCount(), layout.highestCount(), name);
    if (!now.equals(format)) {
      format = now;
    }
  }

  private SourceException unreadable(String what) {
    return new SourceException(
        Reason.FAILED,
        buffer.deviceFile().toString(),
        "cannot be read: " + what,
        "see that the device is still there, that the user may read it, and that no other program"
            + " does");
  }

  private void awaitPairs(SampleBlock block) {
    long start = clock.nanoTime();
    take(block);
    while (block.count == 0 && reader.end() == null && clock.nanoTime() - start < WAIT_NANOS) {
      pause.pauseNanos(POLL_NANOS);
      take(block);
    }
    if (block.count == 0 && reader.end() != null) {
      letGo();
    }
  }

  /** Takes what has come, up to a gap. */
  private void take(SampleBlock block) {
    boolean goOn = true;
    while (goOn && block.count < SampleBlock.CAPACITY && (waiting || takeScan())) {
      goOn = append(block);
    }
  }

  private boolean takeScan() {
    if (!reader.take(scan)) {
      return false;
    }
    long stampNanos = layout.stampNanos(scan);
    waitingIndex = stampIndex.place(stampNanos, clock.nanoTime());
    waiting = true;
    jitter.add(stampNanos, stampIndex.deviationNanos());
    if (unproven) {
      onProven();
    }
    return true;
  }

  private boolean append(SampleBlock block) {
    if (block.count == 0) {
      block.firstIndex = waitingIndex;
    } else if (waitingIndex != block.firstIndex + block.count) {
      return false;
    }
    block.current[block.count] = layout.current(scan);
    block.voltage[block.count] = layout.voltage(scan);
    block.count++;
    waiting = false;
    return true;
  }

  private void onProven() {
    unproven = false;
    if (seen) {
      counters.reconnects++;
    }
    seen = true;
    tell(null);
  }

  private void letGo() {
    String end = reader.end();
    reader.close();
    reader = null;
    buffer.stop();
    stampIndex.interrupt();
    jitter.interrupt();
    tell(unreadable(end));
  }

  /** Logs each change once: tries go on twice a second, for days if need be. */
  private void tell(SourceException now) {
    String before = failure == null ? "" : failure.getMessage();
    if (now == null) {
      Logger.info("{} delivers", name);
    } else if (!now.getMessage().equals(before)) {
      Logger.warn("{}; trying again twice a second", now.getMessage());
    }
    failure = now;
  }

  @Override
  public String trouble() {
    SourceException problem = failure;
    if (problem != null) {
      return problem.getMessage();
    }
    return rateTrouble();
  }

  @Override
  public String rateTrouble() {
    double rate = jitter.pairsPerSecond();
    if (Math.abs(rate - pairsPerSecond) > HELD * pairsPerSecond) {
      return String.format(
          Locale.ROOT,
          "%s: asked for %d pairs/s, its time stamps say %.0f; set the trigger's rate, or write"
              + " source.pairs_per_second = %.0f",
          name,
          pairsPerSecond,
          rate,
          rate);
    }
    return null;
  }

  @Override
  public boolean measuresRate() {
    return true;
  }

  @Override
  public String performance() {
    return jitter.words(counters.lostPairs);
  }

  @Override
  public SourceFormat format() {
    return format;
  }

  @Override
  public SourceCounters counters() {
    return counters;
  }

  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    if (reader != null) {
      reader.close();
      reader = null;
    }
    buffer.stop();
  }
}
