package org.boothlamp.testing;

import java.io.FileInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.acquisition.FrameDecoder;
import org.boothlamp.acquisition.FrameKind;

/**
 * A front end at the far end of a serial line: plays pairs as frames in real time, or faster, with
 * a hello every second, and collects the lamp frames that come back.
 *
 * <p>A frame leaves when its last pair would have been sampled, counted from the start, so nothing
 * drifts. If its port goes away it samples on, and sends again once the port is back under the same
 * name. Set it up, then {@link #start}; everything else may be called from any thread.
 */
public final class FrontEndPlayer implements AutoCloseable {

  /** What happens to a frame on its way. */
  @FunctionalInterface
  public interface Wire {

    /**
     * Takes a frame as encoded and gives back what goes over the wire; no bytes for a lost frame.
     *
     * @param frame bytes with the zero that ends them
     * @param frameNumber number of the samples frame from 0, or -1 for a hello
     */
    byte[] carry(byte[] frame, long frameNumber);
  }

  /**
   * A lamp frame that came back.
   *
   * @param counter frame counter, 0 to 255
   * @param signalCode code of the signal
   * @param arrivalNanos {@link System#nanoTime} when it arrived
   */
  public record LampSeen(int counter, int signalCode, long arrivalNanos) {}

  private static final byte[] NOTHING = {};
  private static final long LONGEST_CLOSE_MILLIS = 2_000;
  private static final long REOPEN_NANOS = TimeUnit.MILLISECONDS.toNanos(20);

  private final Path port;
  private final PairStream pairs;
  private final int pairsPerSecond;
  private final BoardFrames board;

  private int framePairs = 25;
  private double speed = 1;
  private Wire wire = (frame, frameNumber) -> frame;

  private final Thread sender = new Thread(this::send, "front end sender");
  private final Thread listener = new Thread(this::listen, "front end listener");
  private volatile boolean stopping;
  private volatile boolean silent;
  private volatile boolean restartDue;
  private OutputStream output;

  private final List<LampSeen> lampFrames = new ArrayList<>();
  private long[] sendNanos = new long[1024];
  private int framesDone;

  /** A player at this end of a line. */
  public FrontEndPlayer(Path port, PairStream pairs, int pairsPerSecond) {
    this.port = port;
    this.pairs = pairs;
    this.pairsPerSecond = pairsPerSecond;
    board = new BoardFrames(pairs, pairsPerSecond);
    sender.setDaemon(true);
    listener.setDaemon(true);
  }

  /** Pairs in a frame, 1 to 100; 25 if not set. */
  public FrontEndPlayer framePairs(int count) {
    framePairs = count;
    return this;
  }

  /** Times real time; 1 if not set. */
  public FrontEndPlayer speed(double timesRealTime) {
    speed = timesRealTime;
    return this;
  }

  /** What happens to frames on their way; nothing if not set. */
  public FrontEndPlayer wire(Wire damage) {
    wire = damage;
    return this;
  }

  /** Starts to play. */
  public FrontEndPlayer start() {
    sender.start();
    listener.start();
    return this;
  }

  /** Sends nothing from now on; the board samples on. */
  public void fallSilent() {
    silent = true;
  }

  /** Sends again. */
  public void speakAgain() {
    silent = false;
  }

  /** The board starts again: hello, index and counter from 0. */
  public void restartBoard() {
    restartDue = true;
  }

  private void send() {
    long startNanos = System.nanoTime();
    long frames = pairs.pairs() / framePairs;
    long nextHelloPair = 0;
    for (long frame = 0; frame < frames && !stopping; frame++) {
      waitUntil(startNanos + (long) ((frame + 1) * framePairs * 1e9 / (pairsPerSecond * speed)));
      boolean restarted = restartDue;
      if (restarted) {
        restartDue = false;
        board.restart();
      }
      if (restarted || frame * framePairs >= nextHelloPair) {
        put(board.hello(), -1);
        nextHelloPair = frame * framePairs + pairsPerSecond;
      }
      byte[] samples = board.samples(framePairs);
      noteSending();
      put(samples, frame);
    }
    closeOutput();
  }

  private void waitUntil(long nanos) {
    long left = nanos - System.nanoTime();
    while (left > 0 && !stopping) {
      LockSupport.parkNanos(left);
      left = nanos - System.nanoTime();
    }
  }

  private void put(byte[] frame, long frameNumber) {
    byte[] carried = silent ? NOTHING : wire.carry(frame, frameNumber);
    try {
      if (output == null) {
        // a plain FileOutputStream would create a file in the place of a port that is gone
        output = Files.newOutputStream(port, StandardOpenOption.WRITE);
      }
      output.write(carried);
    } catch (IOException portIsGone) {
      closeOutput();
    }
  }

  private void closeOutput() {
    try {
      if (output != null) {
        output.close();
      }
    } catch (IOException portIsGone) {
      // a port that is gone is as good as closed
    } finally {
      output = null;
    }
  }

  private synchronized void noteSending() {
    if (framesDone == sendNanos.length) {
      sendNanos = Arrays.copyOf(sendNanos, 2 * framesDone);
    }
    sendNanos[framesDone++] = System.nanoTime();
  }

  private void listen() {
    byte[] bytes = new byte[256];
    while (!stopping) {
      FrameDecoder decoder = new FrameDecoder();
      try (FileInputStream input = new FileInputStream(port.toFile())) {
        int count = input.read(bytes);
        while (count >= 0 && !stopping) {
          take(decoder, bytes, count);
          count = input.read(bytes);
        }
      } catch (IOException portIsGone) {
        LockSupport.parkNanos(REOPEN_NANOS);
      }
    }
  }

  private synchronized void take(FrameDecoder decoder, byte[] bytes, int count) {
    long now = System.nanoTime();
    for (int i = 0; i < count; i++) {
      if (decoder.accept(bytes[i]) == FrameKind.LAMP) {
        lampFrames.add(new LampSeen(decoder.lamp().counter, decoder.lamp().signalCode, now));
      }
    }
  }

  /** {@link System#nanoTime} just before the frame with this pair was written. */
  public synchronized long sendNanosOfPair(long index) {
    int frame = (int) (index / framePairs);
    if (frame >= framesDone) {
      throw new IllegalArgumentException("pair " + index + " was not sent yet");
    }
    return sendNanos[frame];
  }

  /** Pairs sampled so far; those of a silent or cut line too. */
  public synchronized long pairsDone() {
    return (long) framesDone * framePairs;
  }

  /** The lamp frames that came back so far, in order. */
  public synchronized List<LampSeen> lampFrames() {
    return List.copyOf(lampFrames);
  }

  /** True once all pairs are sent. */
  public boolean isDone() {
    return !sender.isAlive();
  }

  /** Waits until all pairs are sent. */
  public void awaitDone() throws InterruptedException {
    sender.join();
  }

  /**
   * Ends the sender. It may hang in its last write if nobody reads the line any more, and the
   * listener in its last read; they end with the next byte, with the port, or with the program.
   */
  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(sender);
    try {
      sender.join(LONGEST_CLOSE_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
