package org.boothlamp;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Clients of a page that mean no good, or have lost their network. */
final class HostileClients implements AutoCloseable {

  private static final String LIVE = "GET /live/stream HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";
  private static final String UNFINISHED = "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: ";
  private static final int PATIENCE_MILLIS = 3_000;

  private final int port;
  private final List<Socket> open = new ArrayList<>();

  HostileClients(int port) {
    this.port = port;
  }

  private Socket connect(int receiveBytes) throws IOException {
    Socket socket = new Socket();
    if (receiveBytes > 0) {
      socket.setReceiveBufferSize(receiveBytes);
    }
    socket.setSoTimeout(PATIENCE_MILLIS);
    socket.connect(new InetSocketAddress("127.0.0.1", port), PATIENCE_MILLIS);
    return socket;
  }

  /** Ask for live values and never read one. */
  void neverRead(int count) throws IOException {
    for (int k = 0; k < count; k++) {
      keep(LIVE, 1_024);
    }
  }

  /** Begin a request and never end it. */
  void neverFinish(int count) throws IOException {
    for (int k = 0; k < count; k++) {
      keep(UNFINISHED + k, 0);
    }
  }

  /** Connect and say nothing. */
  void neverSpeak(int count) throws IOException {
    for (int k = 0; k < count; k++) {
      keep("", 0);
    }
  }

  private void keep(String request, int receiveBytes) throws IOException {
    Socket socket = connect(receiveBytes);
    open.add(socket);
    try {
      socket.getOutputStream().write(bytes(request));
    } catch (IOException refused) {
      // One too many for the page: it may close whatever it likes.
      open.remove(socket);
      socket.close();
    }
  }

  /** Ask as fast as they can, for so long; answers how many answers began. */
  int ask(String path, double seconds) {
    int answers = 0;
    long until = System.nanoTime() + (long) (seconds * TimeUnit.SECONDS.toNanos(1));
    while (System.nanoTime() < until) {
      answers += status("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n") > 0 ? 1 : 0;
    }
    return answers;
  }

  /** Status of the answer to some bytes; 0 if there was none, because the page hung up. */
  int status(String request) {
    try (Socket socket = connect(0)) {
      socket.getOutputStream().write(bytes(request));
      return statusOf(firstLine(socket.getInputStream()));
    } catch (SocketTimeoutException silent) {
      return -1;
    } catch (IOException hungUp) {
      return 0;
    }
  }

  private static String firstLine(InputStream in) throws IOException {
    StringBuilder line = new StringBuilder();
    for (int next = in.read(); next >= 0 && next != '\r'; next = in.read()) {
      line.append((char) next);
    }
    return line.toString();
  }

  private static int statusOf(String line) {
    return line.matches("HTTP/1.1 \\d{3}.*") ? Integer.parseInt(line.substring(9, 12)) : 0;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  int count() {
    return open.size();
  }

  @Override
  public void close() {
    for (Socket socket : open) {
      try {
        socket.close();
      } catch (IOException failure) {
        throw new AssertionError(failure);
      }
    }
  }
}
