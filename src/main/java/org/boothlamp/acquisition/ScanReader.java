package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import org.tinylog.Logger;

/**
 * Reads scans on a thread of its own, because the kernel's device file makes its reader wait
 * without a limit, and the sampler may not. A fixed ring holds them; if the sampler does not come
 * for them in time the newest are dropped, which their time stamps show.
 *
 * <p>One thread takes; {@link #close} ends the reader even while it waits.
 */
final class ScanReader implements AutoCloseable {

  private final ReadableByteChannel channel;
  private final int scanBytes;
  private final byte[] ring;
  private final int capacity;
  private final ByteBuffer buffer;
  private final Thread thread;

  /** Scans put into the ring so far; only the reader writes it. */
  private volatile long written;

  /** Scans taken out so far; only the taker writes it. */
  private volatile long taken;

  private volatile String end;
  private volatile boolean closed;

  /**
   * A reader, started.
   *
   * @param channel waits while it has nothing; closed with this reader
   * @param scanBytes bytes of a scan
   * @param readScans scans to ask for at once
   * @param capacity scans to keep
   */
  ScanReader(ReadableByteChannel channel, int scanBytes, int readScans, int capacity) {
    this.channel = channel;
    this.scanBytes = scanBytes;
    this.capacity = capacity;
    ring = new byte[capacity * scanBytes];
    buffer = ByteBuffer.allocateDirect(readScans * scanBytes);
    thread = new Thread(this::readAll, "scan-reader");
    thread.setDaemon(true);
    thread.start();
  }

  private void readAll() {
    try {
      while (channel.read(buffer) >= 0) {
        buffer.flip();
        while (buffer.remaining() >= scanBytes) {
          keep();
        }
        buffer.compact();
      }
      end = "it ended";
    } catch (IOException failure) {
      end = Causes.words(failure);
      if (!closed) {
        Logger.debug(failure, "the scan reader ends");
      }
    }
  }

  private void keep() {
    long at = written;
    if (at - taken < capacity) {
      buffer.get(ring, (int) (at % capacity) * scanBytes, scanBytes);
      written = at + 1;
    } else {
      buffer.position(buffer.position() + scanBytes);
    }
  }

  /** Takes the oldest scan; false if there is none. */
  boolean take(byte[] scan) {
    long at = taken;
    if (at == written) {
      return false;
    }
    System.arraycopy(ring, (int) (at % capacity) * scanBytes, scan, 0, scanBytes);
    taken = at + 1;
    return true;
  }

  /** Why no more scans will come; null while they may. */
  String end() {
    return end;
  }

  @Override
  public void close() {
    closed = true;
    try {
      channel.close();
    } catch (IOException failure) {
      Logger.debug(failure, "the device file did not close in order");
    }
  }
}
