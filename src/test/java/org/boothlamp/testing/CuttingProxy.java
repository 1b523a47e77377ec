package org.boothlamp.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Passes bytes to and from a server until it has passed as many as it was told to; then it cuts
 * that connection at once, wherever it is. Safe to share.
 */
public final class CuttingProxy implements AutoCloseable {

  private final ServerSocket listener;
  private final int serverPort;
  private final AtomicLong left = new AtomicLong(Long.MAX_VALUE);
  private final AtomicLong passed = new AtomicLong();
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private volatile int cuts;
  private volatile boolean held;

  /** A proxy in front of a port of this computer. */
  public CuttingProxy(int serverPort) throws IOException {
    this.serverPort = serverPort;
    listener = new ServerSocket(0, 50, InetAddress.getByName("127.0.0.1"));
    start(this::accept);
  }

  private static void start(Runnable run) {
    Thread thread = new Thread(run, "proxy");
    thread.setDaemon(true);
    thread.start();
  }

  /** Where to connect to. */
  public int port() {
    return listener.getLocalPort();
  }

  /** Passes so many more bytes, then cuts. */
  public void cutAfter(long bytes) {
    left.set(bytes);
  }

  /** Cuts no more. */
  public void heal() {
    left.set(Long.MAX_VALUE);
  }

  /** Passes nothing while true, and closes nothing either. */
  public void hold(boolean on) {
    held = on;
  }

  /** Connections cut. */
  public int cuts() {
    return cuts;
  }

  /** Bytes passed both ways. */
  public long passed() {
    return passed.get();
  }

  private void accept() {
    while (!listener.isClosed()) {
      try {
        Socket client = listener.accept();
        Socket server = new Socket(InetAddress.getByName("127.0.0.1"), serverPort);
        sockets.add(client);
        sockets.add(server);
        start(() -> pass(client, server));
        start(() -> pass(server, client));
      } catch (IOException closedOrNoServer) {
        Thread.onSpinWait();
      }
    }
  }

  private void pass(Socket from, Socket to) {
    byte[] bytes = new byte[4_096];
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int n = in.read(bytes); n >= 0; n = in.read(bytes)) {
        waitWhileHeld();
        long rest = left.addAndGet(-n);
        if (rest < 0) {
          out.write(bytes, 0, (int) Math.max(0, n + rest));
          cut(from, to);
          return;
        }
        passed.addAndGet(n);
        out.write(bytes, 0, n);
      }
    } catch (IOException | InterruptedException ended) {
      Thread.onSpinWait();
    } finally {
      sockets.remove(from);
      sockets.remove(to);
    }
  }

  private void waitWhileHeld() throws InterruptedException {
    while (held) {
      Thread.sleep(10);
    }
  }

  private void cut(Socket from, Socket to) throws IOException {
    cuts++;
    // Reset instead of an orderly end, in both directions.
    from.setSoLinger(true, 0);
    to.setSoLinger(true, 0);
  }

  @Override
  public void close() throws IOException {
    listener.close();
    for (Socket socket : sockets) {
      socket.close();
    }
  }
}
