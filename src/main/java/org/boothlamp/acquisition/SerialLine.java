package org.boothlamp.acquisition;

import com.fazecast.jSerialComm.SerialPort;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import org.tinylog.Logger;

/**
 * A serial port that the source reads and the lamp writes.
 *
 * <p>A lost cable shows as a failed read; the port is then closed, and opened again every 0.5 s
 * until it is back, by the reader's thread. Reading looks at the port every 3 ms and takes all that
 * has arrived: that costs little, and delays a byte by 3 ms at most. (The library's own waiting is
 * of no use here: it rounds up to 0.1 s.) Neither reading nor writing creates objects while the
 * line is up.
 *
 * <p>One thread reads; any thread writes; {@link #close} comes after the last read.
 */
public final class SerialLine implements ByteLine {

  private static final long POLL_NANOS = 3_000_000L;
  private static final long RETRY_NANOS = 500_000_000L;
  private static final long LONGEST_DRAIN_NANOS = 100_000_000L;

  /** A USB adapter sends what it holds itself every 16 ms, and nobody can see what it holds. */
  private static final long ADAPTER_NANOS = 30_000_000L;

  /**
   * A port with more than this still to send takes nothing new: the library would wait for room. A
   * kernel's send buffer holds 4096 bytes, and some USB drivers count a whole buffer per write.
   */
  private static final int LARGEST_BACKLOG_BYTES = 2048;

  private final PortOpener opener;

  /** Held while the port is written, exchanged or closed, so that no write meets a closed port. */
  private final ReentrantLock portLock = new ReentrantLock();

  private volatile SerialPort port;
  private volatile SourceException failure;
  private volatile int openings;
  private volatile boolean closed;

  /** True from a failed read or write until the port is opened again. */
  private volatile boolean lost;

  private boolean moreIsWaiting;
  private boolean tried;
  private long lastTryNanos;

  /**
   * A line, not opened yet.
   *
   * @param path device file or a link to one
   * @param baud bits per second
   */
  public SerialLine(String path, int baud) {
    this(path, baud, "front end");
  }

  /**
   * The same.
   *
   * @param device what is plugged in there, for people
   */
  SerialLine(String path, int baud, String device) {
    opener = new PortOpener(path, baud, device);
  }

  /**
   * Runs {@code hook} when the program is told to end, before the serial library closes all ports
   * in a shutdown hook of its own: a plain shutdown hook runs at the same time and may find its
   * port gone.
   */
  public static void beforePortsClose(Thread hook) {
    SerialPort.addShutdownHook(hook);
  }

  /**
   * Opens the line now, before the first read, to learn whether it can be.
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
  public int read(byte[] buffer, long waitNanos) {
    if (closed || !ensureOpen()) {
      LockSupport.parkNanos(waitNanos);
      return DOWN;
    }
    long start = System.nanoTime();
    long waited = 0;
    int count;
    do {
      if (!moreIsWaiting) {
        LockSupport.parkNanos(Math.min(POLL_NANOS, waitNanos - waited));
      }
      count = port.readBytes(buffer, buffer.length, 0);
      moreIsWaiting = count == buffer.length;
      waited = System.nanoTime() - start;
    } while (count == 0 && waited < waitNanos);
    if (count < 0) {
      lost = true;
      return DOWN;
    }
    return count;
  }

  private boolean ensureOpen() {
    if (port != null && !lost) {
      return true;
    }
    if (tried && System.nanoTime() - lastTryNanos < RETRY_NANOS) {
      return false;
    }
    tryToOpen();
    return port != null && !lost;
  }

  /** Gives up at once if a write is on its way: that write fails soon, and the next try comes. */
  private void tryToOpen() {
    if (!portLock.tryLock()) {
      return;
    }
    try {
      closePort();
      port = opener.open();
      openings++;
      tell(null);
      lost = false;
    } catch (SourceException refused) {
      tell(refused);
    } finally {
      tried = true;
      lastTryNanos = System.nanoTime();
      portLock.unlock();
    }
  }

  /** Logs each change of the line's state once: tries go on twice a second, for days if need be. */
  private void tell(SourceException now) {
    String before = failure == null ? "" : failure.getMessage();
    if (now == null) {
      Logger.info("{} is open", opener);
    } else if (!now.getMessage().equals(before)) {
      Logger.warn("{}; trying again twice a second", now.getMessage());
    }
    failure = now;
  }

  private void closePort() {
    SerialPort old = port;
    port = null;
    if (old != null) {
      old.closePort();
    }
  }

  @Override
  public boolean write(byte[] bytes, int length) {
    portLock.lock();
    try {
      SerialPort open = port;
      if (open == null || lost) {
        return false;
      }
      int backlog = open.bytesAwaitingWrite();
      if (backlog > LARGEST_BACKLOG_BYTES) {
        return false;
      }
      // A lost port writes 0 bytes without complaint.
      boolean written = backlog >= 0 && open.writeBytes(bytes, length) == length;
      lost = !written;
      return written;
    } finally {
      portLock.unlock();
    }
  }

  @Override
  public int openings() {
    return openings;
  }

  @Override
  public SourceException failure() {
    return failure;
  }

  @Override
  public void close() {
    portLock.lock();
    try {
      closed = true;
      drain();
      closePort();
    } finally {
      portLock.unlock();
    }
  }

  /** Closing throws away what was not sent yet, and that may be the lamp's last word. */
  private void drain() {
    long start = System.nanoTime();
    while (port != null
        && port.bytesAwaitingWrite() > 0
        && System.nanoTime() - start < LONGEST_DRAIN_NANOS) {
      LockSupport.parkNanos(POLL_NANOS);
    }
    if (port != null && !lost) {
      LockSupport.parkNanos(ADAPTER_NANOS);
    }
  }
}
