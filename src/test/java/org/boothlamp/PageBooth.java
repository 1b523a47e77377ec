package org.boothlamp;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.testing.BoothFolder;

/** A booth with a page, as a process of its own. */
final class PageBooth implements AutoCloseable {

  private final Path folder;
  private final int port;
  private final BoothFolder booth;
  private DaemonProcess daemon;

  /** A booth in a new folder inside another. */
  PageBooth(Path parent, String name) throws IOException {
    this(parent, name, freePort());
  }

  /** The same at a port that somebody chose. */
  PageBooth(Path parent, String name, int port) throws IOException {
    folder = Files.createDirectory(parent.resolve(name));
    this.port = port;
    booth = new BoothFolder(folder).defaultProcedure("S-3F-18");
    booth.stickProcedure("S-3F-18", "fill");
    booth.source(BoothFolder.SIMULATED.replace("\"full\"", "\"real-time\""));
  }

  /** Free a moment ago; nobody else asks for ports in between here. */
  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  BoothFolder folder() {
    return booth;
  }

  int port() {
    return port;
  }

  String origin() {
    return "http://127.0.0.1:" + port;
  }

  LampTrace trace() {
    return LampTrace.read(booth.trace());
  }

  DaemonProcess daemon() {
    return daemon;
  }

  /** Starts the monitor and waits for its page; more keys of [page] may come along. */
  PageBooth start(String id, String pageKeys, String moreTables) throws Exception {
    booth.extra("[page]\nport = " + port + "\n" + pageKeys + moreTables);
    Path settings = booth.write();
    Files.writeString(settings, Files.readString(settings).replace("\"B-07\"", "\"" + id + "\""));
    daemon = DaemonProcess.start(folder, "run", "--settings", settings);
    return this;
  }

  PageBooth awaitPage() throws InterruptedException {
    daemon.awaitSaid("page: http");
    return this;
  }

  @Override
  public void close() {
    if (daemon != null) {
      daemon.close();
    }
  }
}
