package org.boothlamp.app;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.boothlamp.acquisition.SerialLine;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.cli.RunningBooth;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.MonitorStatus;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.monitor.WorkerThread;
import org.boothlamp.page.PageServer;
import org.boothlamp.page.PageStartException;
import org.tinylog.Logger;

/**
 * The parts of a monitor that runs, and the order of their start and end.
 *
 * <pre>
 *   start:   boothlog -> recorder -> lamp -> sampler -> badge -> page -> sync
 *   close:   sampler -> lamp (dark, over the source's line if need be) -> page -> source -> badge
 *            -> recorder -> boothlog -> sync, each even if another fails
 * </pre>
 *
 * <p>Consumers start first and end last, so nothing is produced that nobody takes. If the sampler
 * or the writer fails, the booth is over: it ends as a whole and whoever supervises the process
 * starts it again. A recorder that fails only ends the raw recordings, and sync that fails only
 * itself, and so does the badge reader; sync starts and ends last, as a network may keep it
 * waiting. A page that cannot be opened is an event, and no more. Safe to share.
 */
final class Booth implements RunningBooth {

  private final SampleSource source;
  private final RefreshedLamp lamp;
  private final Monitor monitor;
  private final BoothLogWriter writer;
  private final WallClock wallClock;
  private final SamplingEvents samplingEvents;
  private final WorkerThread samplerThread;
  private final WorkerThread writerThread;
  private final WorkerThread recorderThread;
  private final WorkerThread syncThread;
  private final WorkerThread badgeThread;
  private final CountDownLatch over = new CountDownLatch(1);
  private final AtomicReference<Throwable> failure = new AtomicReference<>();
  private Supplier<PageServer> openPage;
  private PageServer page;
  private boolean started;
  private boolean closed;

  /** A booth; recorder, sync, which sends the log's rows on, and badge reader may be null. */
  Booth(
      SampleSource source,
      RefreshedLamp lamp,
      Monitor monitor,
      BoothLogWriter writer,
      Worker recorder,
      WallClock wallClock,
      Worker sync,
      Worker badge) {
    this.source = source;
    this.lamp = lamp;
    this.monitor = monitor;
    this.writer = writer;
    this.wallClock = wallClock;
    samplingEvents = new SamplingEvents(source, writer, NanoClock.SYSTEM);
    samplerThread = new WorkerThread(new LastStep(monitor, over::countDown), this::fail);
    writerThread = new WorkerThread(new WatchedWriter(writer, samplingEvents), this::fail);
    recorderThread = recorder == null ? null : new WorkerThread(recorder, this::failRecorder);
    syncThread = sync == null ? null : new WorkerThread(sync, Booth::sayThatSyncEnded);
    badgeThread = badge == null ? null : new WorkerThread(badge, this::failBadge);
  }

  private void failBadge(Throwable thrown) {
    Logger.error(thrown, "badges are not read any more; boothlamp sign-in works on");
    writer.note(EventKind.BADGE_READER_LOST, thrown.toString());
  }

  /** Lets a page be opened once the lamp works; before {@link #start}. */
  Booth withPage(Supplier<PageServer> opener) {
    openPage = opener;
    return this;
  }

  private void startPage() {
    try {
      page = openPage.get();
      page.start();
    } catch (PageStartException refused) {
      Logger.warn("page: {}", refused.getMessage());
      writer.note(EventKind.PAGE_NOT_OPEN, refused.getMessage());
    } catch (RuntimeException fault) {
      Logger.error(fault, "page: it did not open; the monitor goes on without");
      writer.note(EventKind.PAGE_NOT_OPEN, fault.toString());
    }
  }

  private void failRecorder(Throwable thrown) {
    Logger.error(thrown, "raw recordings have ended because of a fault of the program");
    writer.note(EventKind.RECORDINGS_STOPPED, thrown.toString());
  }

  private static void sayThatSyncEnded(Throwable thrown) {
    Logger.error(thrown, "sync has ended; the monitor goes on, and keeps all rows in its log");
  }

  private void fail(Throwable thrown) {
    if (!failure.compareAndSet(null, thrown)) {
      Logger.error(thrown, "and another part failed after that");
    }
    over.countDown();
  }

  @Override
  public synchronized void start() {
    started = true;
    writer.note(EventKind.STARTED, source.limits());
    writerThread.start();
    if (recorderThread != null) {
      recorderThread.start();
    }
    lamp.start();
    samplerThread.start();
    if (badgeThread != null) {
      badgeThread.start();
    }
    if (openPage != null) {
      startPage();
    }
    if (syncThread != null) {
      syncThread.start();
    }
  }

  /**
   * The serial library closes its ports in a hook of its own, beside all others: only a thread that
   * it knows of comes before it, and can still send the lamp's last word.
   */
  @Override
  public void closeOnShutdown() {
    Thread hook = new Thread(this::close, "shutdown");
    if (source instanceof LineSource) {
      SerialLine.beforePortsClose(hook);
    } else {
      Runtime.getRuntime().addShutdownHook(hook);
    }
  }

  @Override
  public void awaitEnd() throws InterruptedException {
    over.await();
  }

  @Override
  public boolean isRunning() {
    return over.getCount() > 0;
  }

  @Override
  public Throwable failure() {
    return failure.get();
  }

  @Override
  public MonitorStatus status() {
    return monitor.status();
  }

  @Override
  public String logTrouble() {
    return writer.counters().trouble;
  }

  @Override
  public long wallMillis() {
    return wallClock.epochMillis();
  }

  @Override
  public synchronized void close() {
    if (closed) {
      return;
    }
    closed = true;
    if (started) {
      attempt(samplerThread::close);
    }
    attempt(lamp::close);
    if (page != null) {
      attempt(page::close);
    }
    attempt(source::close);
    if (started && badgeThread != null) {
      attempt(badgeThread::close);
    }
    if (started && recorderThread != null) {
      attempt(recorderThread::close);
    }
    if (started) {
      String performance = source.performance();
      writer.note(EventKind.STOPPED, performance == null ? "" : performance);
      attempt(writerThread::close);
    } else {
      attempt(writer::close);
    }
    if (started && syncThread != null) {
      attempt(syncThread::close);
    }
    over.countDown();
  }

  private static void attempt(Runnable close) {
    try {
      close.run();
    } catch (RuntimeException failure) {
      Logger.error(failure, "a part did not close in order; the others are closed all the same");
    }
  }

  /** A worker that says when it has ended, so that nobody waits for it in vain. */
  private record LastStep(Worker worker, Runnable onEnd) implements Worker {

    @Override
    public String roleName() {
      return worker.roleName();
    }

    @Override
    public void start() {
      worker.start();
    }

    @Override
    public boolean step() {
      return worker.step();
    }

    @Override
    public void close() {
      worker.close();
      onEnd.run();
    }
  }

  /** The log's writer, which looks at the sampling between its steps and has the time for it. */
  private record WatchedWriter(Worker writer, SamplingEvents events) implements Worker {

    @Override
    public String roleName() {
      return writer.roleName();
    }

    @Override
    public void start() {
      writer.start();
    }

    @Override
    public boolean step() {
      events.look();
      return writer.step();
    }

    @Override
    public void close() {
      events.finish();
      writer.close();
    }
  }
}
