package org.boothlamp.acquisition;

import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;

/**
 * Pairs from the serial front end.
 *
 * <pre>
 *   ByteLine -> input bytes -> FrameDecoder -> PairIndex -> SampleBlock
 * </pre>
 *
 * <p>Delivers nothing until the board has said hello, at the start and after every reconnect: only
 * then is the meaning of its counts known. A frame that fails its CRC delivers nothing. A read
 * takes all whole frames that have arrived as long as they follow each other and fit into a block;
 * one that does not waits for the next read. The line belongs to who made it, and is closed by them
 * after the last user: the lamp may share it.
 *
 * <p>Confined to one thread, but {@link #problem} may be asked from any.
 */
public final class SerialSource implements SampleSource {

  private static final int INPUT_BYTES = 8192;

  /** Leaves a fifth of the longest wait to the scheduler. */
  private static final long WAIT_NANOS = LONGEST_WAIT_NANOS / 5 * 4;

  private final ByteLine line;
  private final NanoClock clock;
  private final FrameDecoder decoder = new FrameDecoder();
  private final PairIndex pairIndex = new PairIndex();
  private final SourceCounters counters = new SourceCounters();

  private final byte[] input = new byte[INPUT_BYTES];
  private int inputFrom;
  private int inputTo;
  private long arrivalNanos;

  /** A frame decoded and not used yet, because it does not fit behind the block's pairs. */
  private FrameKind waiting = FrameKind.NONE;

  private long waitingIndex;

  private final HelloFrame knownHello = new HelloFrame();
  private SourceFormat format;
  private boolean helloIsDue = true;
  private int openings;
  private boolean closed;
  private volatile SourceException helloProblem;

  /**
   * A source on a line.
   *
   * @param line where the board is; not opened before the first read, not closed by this source
   * @param clock monotonic time
   */
  public SerialSource(ByteLine line, NanoClock clock) {
    this.line = line;
    this.clock = clock;
  }

  @Override
  public Outcome read(SampleBlock block) {
    block.count = 0;
    if (closed) {
      block.monotonicNanos = clock.nanoTime();
      return Outcome.END;
    }
    takeFrames(block);
    if (block.count == 0) {
      receive();
      takeFrames(block);
    }
    count();
    block.monotonicNanos = clock.nanoTime();
    return block.count > 0 ? Outcome.PAIRS : Outcome.NOTHING;
  }

  private void receive() {
    int count = line.read(input, WAIT_NANOS);
    if (line.openings() != openings) {
      onOpened();
    }
    arrivalNanos = clock.nanoTime();
    inputFrom = 0;
    inputTo = Math.max(count, 0);
  }

  private void onOpened() {
    if (openings > 0) {
      counters.reconnects += line.openings() - openings;
      decoder.resynchronise();
      pairIndex.onReconnect();
      helloIsDue = true;
    } else {
      counters.reconnects = line.openings() - 1L;
    }
    openings = line.openings();
  }

  private void takeFrames(SampleBlock block) {
    boolean goOn = true;
    while (goOn && (waiting != FrameKind.NONE || inputFrom < inputTo)) {
      goOn = waiting != FrameKind.NONE ? takeWaiting(block) : takeNext(block);
    }
  }

  private boolean takeNext(SampleBlock block) {
    FrameKind kind = decoder.accept(input[inputFrom++]);
    if (kind == FrameKind.HELLO) {
      return takeHello(block);
    }
    if (kind == FrameKind.SAMPLES && !helloIsDue) {
      return takeSamples(block);
    }
    return true;
  }

  private boolean takeWaiting(SampleBlock block) {
    FrameKind kind = waiting;
    waiting = FrameKind.NONE;
    return kind == FrameKind.HELLO ? takeHello(block) : append(block, waitingIndex);
  }

  private boolean takeSamples(SampleBlock block) {
    long index = pairIndex.place(decoder.samples(), arrivalNanos);
    return index == PairIndex.DUPLICATE || append(block, index);
  }

  /** Appends the decoder's frame, or lets it wait if it is of another run of pairs. */
  private boolean append(SampleBlock block, long index) {
    SamplesFrame frame = decoder.samples();
    if (block.count == 0) {
      block.firstIndex = index;
    } else if (index != block.firstIndex + block.count
        || block.count + frame.count > SampleBlock.CAPACITY) {
      waiting = FrameKind.SAMPLES;
      waitingIndex = index;
      return false;
    }
    System.arraycopy(frame.current, 0, block.current, block.count, frame.count);
    System.arraycopy(frame.voltage, 0, block.voltage, block.count, frame.count);
    block.count += frame.count;
    return true;
  }

  /** A hello that changes the format waits until the pairs of the old one are delivered. */
  private boolean takeHello(SampleBlock block) {
    HelloFrame hello = decoder.hello();
    boolean changes = format == null || !hello.saysTheSameAs(knownHello);
    if (changes && block.count > 0) {
      waiting = FrameKind.HELLO;
      return false;
    }
    helloProblem = changes ? problemOf(hello) : null;
    helloIsDue = helloProblem != null;
    if (!helloIsDue) {
      learn(hello, changes);
    }
    return true;
  }

  private void learn(HelloFrame hello, boolean changes) {
    if (changes) {
      knownHello.set(hello);
      format =
          new SourceFormat(
              hello.pairsPerSecond, hello.lowestCount, hello.highestCount, hello.boardId());
    }
    pairIndex.onHello(hello.pairsPerSecond);
  }

  private static SourceException problemOf(HelloFrame hello) {
    if (hello.version != HelloFrame.VERSION) {
      return refused(
          hello,
          "it speaks version " + hello.version + " of the frames, not " + HelloFrame.VERSION,
          "use the version of board and monitor that belong together");
    }
    if (hello.pairsPerSecond < SourceFormat.LEAST_PAIRS_PER_SECOND) {
      return refused(
          hello,
          "it must send at least "
              + SourceFormat.LEAST_PAIRS_PER_SECOND
              + " pairs a second, and says "
              + Integer.toUnsignedLong(hello.pairsPerSecond),
          "set the board's rate");
    }
    if (hello.lowestCount >= hello.highestCount) {
      return refused(
          hello,
          "its lowest count must be below its highest, and it says "
              + hello.lowestCount
              + " and "
              + hello.highestCount,
          "set the board's range");
    }
    return null;
  }

  private static SourceException refused(HelloFrame hello, String what, String nextMove) {
    return new SourceException(
        Reason.MALFORMED, "front end \"" + hello.boardId() + "\"", what, nextMove);
  }

  private void count() {
    counters.badFrames = decoder.badFrames();
    counters.lostPairs = pairIndex.lostPairs();
  }

  /** Why no pairs come, as far as this end can tell, or null. */
  public SourceException problem() {
    SourceException failure = line.failure();
    return failure != null ? failure : helloProblem;
  }

  @Override
  public String trouble() {
    SourceException problem = problem();
    return problem == null ? null : problem.getMessage();
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
    closed = true;
  }
}
