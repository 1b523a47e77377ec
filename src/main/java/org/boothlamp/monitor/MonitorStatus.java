package org.boothlamp.monitor;

import org.boothlamp.judging.Signal;

/**
 * What the monitor sees now, for a status line. Written by the sampler's thread; any thread may
 * read single values, which may stem from two steps.
 */
public final class MonitorStatus {

  private volatile Signal signal = Signal.DARK;
  private volatile double amps = Double.NaN;
  private volatile double volts = Double.NaN;
  private volatile double arcSeconds;
  private volatile double sourceSeconds;
  private volatile Assignment assignment = Assignment.NONE;
  private volatile long lostEntries;

  void set(
      Signal signal,
      double amps,
      double volts,
      double arcSeconds,
      double sourceSeconds,
      Assignment assignment) {
    this.signal = signal;
    this.amps = amps;
    this.volts = volts;
    this.arcSeconds = arcSeconds;
    this.sourceSeconds = sourceSeconds;
    this.assignment = assignment;
  }

  void setLostEntries(long lostEntries) {
    this.lostEntries = lostEntries;
  }

  /** What the lamp is told to show. */
  public Signal signal() {
    return signal;
  }

  /** Trailing average of the current, A; NaN while no arc burns. */
  public double amps() {
    return amps;
  }

  /** Trailing average of the voltage, V; NaN while no arc burns. */
  public double volts() {
    return volts;
  }

  /** Length of the running segment, s; 0 while none runs. */
  public double arcSeconds() {
    return arcSeconds;
  }

  /** Time since the source's first pair, s. */
  public double sourceSeconds() {
    return sourceSeconds;
  }

  /** Who welds, against what. */
  public Assignment assignment() {
    return assignment;
  }

  /** Log entries that found the queue full. */
  public long lostEntries() {
    return lostEntries;
  }
}
