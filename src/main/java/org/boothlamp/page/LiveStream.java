package org.boothlamp.page;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;

/**
 * Sends live values to all who look, ten times a second, from one thread. Who does not take them
 * within {@link #SLOWEST_NANOS} is cut off. The sampler knows nothing of it. {@link #add} may come
 * from any thread.
 */
final class LiveStream implements Worker {

  static final String PATH = "/live/stream";

  static final long EVERY_NANOS = 100_000_000L;

  /** As long as one that hangs holds up the others, once. */
  static final long SLOWEST_NANOS = 100_000_000L;

  /** Of one address: tablets leave half-open connections behind when they lose their network. */
  static final int MOST_OF_ADDRESS = 8;

  private final LiveFrames frames;
  private final Deadlines deadlines;
  private final NanoClock clock;
  private final int most;
  private final ConcurrentLinkedQueue<LiveSink> waiting = new ConcurrentLinkedQueue<>();
  private final AtomicInteger count = new AtomicInteger();
  private final List<LiveSink> sinks = new ArrayList<>();
  private volatile boolean closed;
  private long nextNanos;

  /**
   * A stream.
   *
   * @param most how many may look at once
   */
  LiveStream(LiveFrames frames, Deadlines deadlines, NanoClock clock, int most) {
    this.frames = frames;
    this.deadlines = deadlines;
    this.clock = clock;
    this.most = most;
  }

  /** Lets somebody look from now on; false if there are too many. */
  boolean add(LiveSink sink) {
    if (closed || count.incrementAndGet() > most) {
      count.decrementAndGet();
      return false;
    }
    waiting.add(sink);
    return true;
  }

  /** True if nobody more is let in. */
  boolean isFull() {
    return count.get() >= most;
  }

  /** How many look. */
  int count() {
    return count.get();
  }

  @Override
  public String roleName() {
    return "page-live";
  }

  @Override
  public void start() {
    nextNanos = clock.nanoTime();
  }

  @Override
  public boolean step() {
    nextNanos += EVERY_NANOS;
    long wait = nextNanos - clock.nanoTime();
    if (wait > 0) {
      LockSupport.parkNanos(wait);
    } else {
      nextNanos = clock.nanoTime();
    }
    tick();
    return true;
  }

  /** One round to all. */
  void tick() {
    frames.look(clock.nanoTime());
    if (!sinks.isEmpty()) {
      Map<LiveKind, byte[]> next = new EnumMap<>(LiveKind.class);
      sinks.removeIf(sink -> !send(sink, next.computeIfAbsent(sink.kind(), frames::next)));
    }
    for (LiveSink sink = waiting.poll(); sink != null; sink = waiting.poll()) {
      welcome(sink);
    }
  }

  private void welcome(LiveSink sink) {
    cutOldestOf(sink.address());
    if (send(sink, frames.first(sink.kind()))) {
      sinks.add(sink);
    }
  }

  private void cutOldestOf(String address) {
    List<LiveSink> same = sinks.stream().filter(other -> other.address().equals(address)).toList();
    if (same.size() >= MOST_OF_ADDRESS) {
      sinks.remove(same.get(0));
      end(same.get(0));
    }
  }

  /** Whoever left, or was too slow, is ended: its connection is of no use any more either way. */
  private boolean send(LiveSink sink, byte[] events) {
    boolean sent;
    try (Deadlines.Deadline deadline = deadlines.begin(SLOWEST_NANOS)) {
      sink.send(events);
      sent = !deadline.isOver();
    } catch (IOException gone) {
      sent = false;
    }
    if (!sent) {
      end(sink);
    }
    return sent;
  }

  private void end(LiveSink sink) {
    count.decrementAndGet();
    Deadlines.Deadline deadline = deadlines.begin(SLOWEST_NANOS);
    try {
      sink.close();
    } finally {
      deadline.close();
    }
  }

  @Override
  public void close() {
    closed = true;
    for (LiveSink sink = waiting.poll(); sink != null; sink = waiting.poll()) {
      end(sink);
    }
    sinks.forEach(this::end);
    sinks.clear();
  }
}
