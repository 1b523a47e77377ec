package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.AsynchronousCloseException;
import java.nio.channels.ReadableByteChannel;

/**
 * A device file in memory: makes its reader wait until there is something, and its writer until the
 * reader has put away everything and come back for more. Safe to share.
 */
final class ScanPipe implements ReadableByteChannel {

  private final ByteBuffer held = ByteBuffer.allocate(1 << 20).limit(0);
  private String failure;
  private boolean readerWaits;
  private boolean open = true;

  /** Sends bytes and waits until they are read. */
  synchronized void send(byte[] bytes) throws InterruptedException {
    held.compact().put(bytes).flip();
    readerWaits = false;
    notifyAll();
    while (open && !readerWaits) {
      wait();
    }
  }

  /** Lets the next read fail. */
  synchronized void fail(String message) throws InterruptedException {
    failure = message;
    notifyAll();
    while (open && failure != null) {
      wait();
    }
  }

  @Override
  public synchronized int read(ByteBuffer into) throws IOException {
    awaitBytes();
    if (!open) {
      throw new AsynchronousCloseException();
    }
    if (failure != null) {
      String message = failure;
      failure = null;
      notifyAll();
      throw new IOException(message);
    }
    int count = Math.min(into.remaining(), held.remaining());
    into.put(held.slice().limit(count));
    held.position(held.position() + count);
    return count;
  }

  private void awaitBytes() throws IOException {
    try {
      while (open && failure == null && !held.hasRemaining()) {
        readerWaits = true;
        notifyAll();
        wait();
      }
    } catch (InterruptedException stopped) {
      throw new IOException(stopped);
    }
  }

  @Override
  public synchronized boolean isOpen() {
    return open;
  }

  @Override
  public synchronized void close() {
    open = false;
    notifyAll();
  }
}
