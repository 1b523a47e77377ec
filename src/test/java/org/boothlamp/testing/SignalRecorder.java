package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;

/** A lamp that remembers what it was told. */
public final class SignalRecorder implements Lamp {

  /** One call; the time is that of the samples. */
  public record Shown(Signal signal, long monotonicNanos) {}

  private final List<Shown> shown = new ArrayList<>();
  private boolean closed;

  @Override
  public void show(Signal signal, long monotonicNanos) {
    shown.add(new Shown(signal, monotonicNanos));
  }

  @Override
  public void close() {
    closed = true;
  }

  /** Every call, in order. */
  public List<Shown> shown() {
    return shown;
  }

  /** The calls that changed the signal. */
  public List<Shown> changes() {
    List<Shown> changes = new ArrayList<>();
    Signal last = null;
    for (Shown call : shown) {
      if (call.signal() != last) {
        changes.add(call);
        last = call.signal();
      }
    }
    return changes;
  }

  /** The signals of {@link #changes}. */
  public List<Signal> signals() {
    return changes().stream().map(Shown::signal).toList();
  }

  /** What the lamp shows now; dark before the first call. */
  public Signal last() {
    return shown.isEmpty() ? Signal.DARK : shown.get(shown.size() - 1).signal();
  }

  /** True once it was closed. */
  public boolean isClosed() {
    return closed;
  }
}
