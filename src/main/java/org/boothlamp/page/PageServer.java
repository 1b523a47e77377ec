package org.boothlamp.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WorkerThread;
import org.tinylog.Logger;

/**
 * The JDK's own HTTP server in front of a {@link Site}, with everything bounded: connections,
 * threads, size and time of each request, turns of each address.
 *
 * <pre>
 *   sockets -> HttpServer -> threads "page-1" … -> Site        ordinary answers
 *                                   \-> LiveStream, thread "page-live" -> all who look live
 *                       thread "page-watch" cuts off whoever is too slow
 * </pre>
 *
 * <p>None of these threads is ever waited for by the sampler. Started and closed once; safe to
 * share.
 */
public final class PageServer implements AutoCloseable {

  static final int MOST_BODY_BYTES = 8_192;
  static final int MOST_URI_CHARACTERS = 2_048;

  /**
   * Besides one for each who looks live. Most of them wait for somebody slow, if ever there are so
   * many: that costs no processor.
   */
  private static final int MOST_THREADS = 48;

  private static final long STACK_BYTES = 256 << 10;
  private static final long LONGEST_ANSWER_NANOS = 5_000_000_000L;
  private static final String FORM = "application/x-www-form-urlencoded";

  /** The JDK reads these once, before the first server of a process. */
  private static final Map<String, String> LIMITS =
      Map.of(
          "jdk.httpserver.maxConnections", "160",
          "sun.net.httpserver.maxReqTime", "3",
          "sun.net.httpserver.maxReqHeaders", "60",
          "sun.net.httpserver.maxReqHeaderSize", "16384",
          "sun.net.httpserver.drainAmount", "16384",
          "sun.net.httpserver.idleInterval", "10",
          "sun.net.httpserver.maxIdleConnections", "40",
          "sun.net.httpserver.nodelay", "true");

  static {
    LIMITS.forEach(
        (name, value) -> {
          if (System.getProperty(name) == null) {
            System.setProperty(name, value);
          }
        });
  }

  private final PageOptions options;
  private final Site site;
  private final LiveStream stream;
  private final Deadlines deadlines;
  private final RateLimit turns;
  private final WorkerThread streamThread;
  private final WorkerThread watchThread;
  private final ThreadPoolExecutor threads;
  private HttpServer server;

  /** A server that does not listen yet. */
  PageServer(PageOptions options, Site site, LiveStream stream, Deadlines deadlines) {
    this.options = options;
    this.site = site;
    this.stream = stream;
    this.deadlines = deadlines;
    turns = new RateLimit(200, 40, NanoClock.SYSTEM);
    streamThread = new WorkerThread(stream, PageServer::sayThatPartEnded);
    watchThread = new WorkerThread(deadlines, PageServer::sayThatPartEnded);
    threads = threads(MOST_THREADS + options.clients());
  }

  /** Whoever comes while all of them are busy is hung up on: nobody waits in a queue. */
  private static ThreadPoolExecutor threads(int most) {
    AtomicInteger number = new AtomicInteger();
    return new ThreadPoolExecutor(
        0,
        most,
        10,
        TimeUnit.SECONDS,
        new SynchronousQueue<>(),
        task -> new Thread(null, task, "page-" + number.incrementAndGet(), STACK_BYTES));
  }

  private static void sayThatPartEnded(Throwable thrown) {
    Logger.error(thrown, "page: a part has ended; the monitor goes on, restart it for the page");
  }

  /**
   * Listens.
   *
   * @throws PageStartException if the address is taken or not this computer's, or the certificate
   *     cannot be used
   */
  public synchronized void start() {
    server = Listening.at(options);
    server.createContext("/", this::handle);
    server.setExecutor(threads);
    watchThread.start();
    streamThread.start();
    server.start();
    Logger.info("page: {}", url());
  }

  /** Where it listens, for people. */
  public synchronized String url() {
    String scheme = options.isSecure() ? "https" : "http";
    String host = options.address().getAddress().getHostAddress();
    return scheme + "://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port();
  }

  /** The port it listens on: the one asked for, or any free one if that was 0. */
  public synchronized int port() {
    return server.getAddress().getPort();
  }

  /**
   * Only what this throws lets the JDK's server forget a connection that broke: closing the
   * exchange closes it too, but keeps it in the list of those that are open.
   *
   * @throws IOException if the visitor has left
   */
  private void handle(HttpExchange exchange) throws IOException {
    ExchangeSink viewer = null;
    Deadlines.Deadline deadline = deadlines.begin(LONGEST_ANSWER_NANOS);
    try {
      viewer = answer(exchange);
    } catch (RuntimeException fault) {
      Logger.error(fault, "page: {} failed", exchange.getRequestURI().getRawPath());
      refuse(exchange, 500);
    } finally {
      deadline.close();
    }
    if (viewer != null) {
      viewer.awaitEnd();
    }
  }

  /** Not null if the answer goes on after this. */
  private ExchangeSink answer(HttpExchange exchange) throws IOException {
    String address = exchange.getRemoteAddress().getAddress().getHostAddress();
    if (!turns.allows(address)) {
      return refuse(exchange, 429);
    }
    if (exchange.getRequestURI().toString().length() > MOST_URI_CHARACTERS) {
      return refuse(exchange, 414);
    }
    String body = body(exchange);
    if (body == null) {
      return null;
    }
    Answer answer = site.answer(call(exchange, body), address);
    answer.headers().forEach(exchange.getResponseHeaders()::set);
    if (answer.live() != null) {
      return goLive(exchange, answer.live(), address);
    }
    send(exchange, answer);
    return null;
  }

  private static Call call(HttpExchange exchange, String body) {
    return new Call(
        exchange.getRequestMethod(),
        exchange.getRequestURI().getRawPath(),
        exchange.getRequestURI().getRawQuery(),
        exchange.getRequestHeaders()::getFirst,
        body);
  }

  /** The body of a form; null if it was refused. */
  private static String body(HttpExchange exchange) throws IOException {
    if (!exchange.getRequestMethod().equals("POST")) {
      return "";
    }
    String type = exchange.getRequestHeaders().getFirst("Content-Type");
    if (type == null || !type.split(";", 2)[0].strip().equalsIgnoreCase(FORM)) {
      refuse(exchange, 415);
      return null;
    }
    try (InputStream in = exchange.getRequestBody()) {
      byte[] bytes = in.readNBytes(MOST_BODY_BYTES + 1);
      if (bytes.length > MOST_BODY_BYTES) {
        refuse(exchange, 413);
        return null;
      }
      return new String(bytes, StandardCharsets.UTF_8);
    }
  }

  private static void send(HttpExchange exchange, Answer answer) throws IOException {
    byte[] body = answer.body();
    boolean bare = body.length == 0 || exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(answer.status(), bare ? -1 : body.length);
    if (!bare) {
      OutputStream out = exchange.getResponseBody();
      out.write(body);
      out.close();
    }
  }

  /** An answer without words, for those who are no browser of ours; nothing goes on after it. */
  private static ExchangeSink refuse(HttpExchange exchange, int status) throws IOException {
    exchange.getResponseHeaders().set("Connection", "close");
    exchange.sendResponseHeaders(status, -1);
    return null;
  }

  private ExchangeSink goLive(HttpExchange exchange, LiveKind kind, String address)
      throws IOException {
    if (stream.isFull()) {
      exchange.getResponseHeaders().set("Retry-After", "5");
      return refuse(exchange, 503);
    }
    exchange.sendResponseHeaders(200, 0);
    ExchangeSink viewer = new ExchangeSink(exchange, kind, address);
    if (!stream.add(viewer)) {
      viewer.close();
    }
    return viewer;
  }

  /** Stops listening and cuts everybody off. */
  @Override
  public synchronized void close() {
    if (server == null) {
      return;
    }
    server.stop(0);
    threads.shutdownNow();
    streamThread.close();
    watchThread.close();
  }

  /** A browser that looks live; its own thread rests meanwhile. */
  private record ExchangeSink(
      HttpExchange exchange, LiveKind kind, String address, CountDownLatch end)
      implements LiveSink {

    ExchangeSink(HttpExchange exchange, LiveKind kind, String address) {
      this(exchange, kind, address, new CountDownLatch(1));
    }

    @Override
    public void send(byte[] events) throws IOException {
      exchange.getResponseBody().write(events);
      exchange.getResponseBody().flush();
    }

    @Override
    public void close() {
      end.countDown();
    }

    /** Rests until the stream has no more for it; always throws then. */
    void awaitEnd() throws IOException {
      try {
        end.await();
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
      }
      throw new IOException("looks live no more: " + address);
    }
  }
}
