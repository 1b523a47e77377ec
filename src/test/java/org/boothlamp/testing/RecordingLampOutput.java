package org.boothlamp.testing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.lamp.LampOutput;
import org.boothlamp.monitor.NanoClock;

/** Keeps what it was told to show, and fails when a test says so. Safe to share. */
public final class RecordingLampOutput implements LampOutput {

  /**
   * One call of apply.
   *
   * @param signal what was shown
   * @param lights lit lights
   * @param samplesNanos time of the samples
   * @param appliedNanos the clock when it was applied
   */
  public record Applied(Signal signal, int lights, long samplesNanos, long appliedNanos) {}

  private final NanoClock clock;
  private final List<Applied> applied = new ArrayList<>();
  private Throwable failure;
  private int tries;
  private int beats;
  private int closes;

  /** An output that notes times by {@code clock}. */
  public RecordingLampOutput(NanoClock clock) {
    this.clock = clock;
  }

  @Override
  public String name() {
    return "recording output";
  }

  @Override
  public synchronized void apply(Signal signal, int lights, long samplesNanos) throws IOException {
    tries++;
    failIfTold();
    applied.add(new Applied(signal, lights, samplesNanos, clock.nanoTime()));
  }

  private void failIfTold() throws IOException {
    if (failure instanceof IOException thrown) {
      throw thrown;
    }
    if (failure instanceof RuntimeException thrown) {
      throw thrown;
    }
    if (failure instanceof Error thrown) {
      throw thrown;
    }
  }

  @Override
  public synchronized void beat() throws IOException {
    failIfTold();
    beats++;
  }

  @Override
  public synchronized void close() throws IOException {
    closes++;
    failIfTold();
    applied.add(new Applied(Signal.DARK, 0, 0, clock.nanoTime()));
  }

  /** Makes every further call throw; null lets it work again. */
  public synchronized void failWith(Throwable thrown) {
    failure = thrown;
  }

  /** Every apply that worked, in order. */
  public synchronized List<Applied> applied() {
    return List.copyOf(applied);
  }

  /** The applies that showed another signal than the one before. */
  public synchronized List<Applied> changes() {
    List<Applied> changes = new ArrayList<>();
    for (Applied next : applied) {
      if (changes.isEmpty() || changes.get(changes.size() - 1).signal() != next.signal()) {
        changes.add(next);
      }
    }
    return changes;
  }

  /** The signals of {@link #changes}. */
  public List<Signal> signals() {
    return changes().stream().map(Applied::signal).toList();
  }

  /** The last apply that worked. */
  public synchronized Applied last() {
    return applied.get(applied.size() - 1);
  }

  /** Calls of apply, failed ones too. */
  public synchronized int tries() {
    return tries;
  }

  /** Calls of beat that worked. */
  public synchronized int beats() {
    return beats;
  }

  /** Calls of close. */
  public synchronized int closes() {
    return closes;
  }
}
