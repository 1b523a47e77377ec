package org.boothlamp.acquisition;

import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.monitor.Worker;

/**
 * Reads a meter again and again on a thread of its own, since a reading takes as long as the meter
 * likes, and hands the readings on to whoever reads the sensor. Ends with the first failure and
 * keeps it. {@link #poll} and {@link #failure} may be called from any thread.
 */
public final class MeterPoller implements Worker {

  /** A meter that answers at once need not be asked more often. */
  private static final long PAUSE_NANOS = 50_000_000L;

  private final ScpiMeter meter;
  private final String query;
  private final double unitsPerReading;
  private final ConcurrentLinkedQueue<Double> readings = new ConcurrentLinkedQueue<>();
  private volatile RuntimeException failure;

  /**
   * A poller that has not begun.
   *
   * @param meter closed with this
   * @param query what it is asked
   * @param unitsPerReading amps or volts for each unit the meter shows; 1 unless a shunt or a clamp
   *     is before it
   */
  public MeterPoller(ScpiMeter meter, String query, double unitsPerReading) {
    this.meter = meter;
    this.query = query;
    this.unitsPerReading = unitsPerReading;
  }

  @Override
  public String roleName() {
    return "meter";
  }

  @Override
  public boolean step() {
    try {
      readings.add(unitsPerReading * meter.read(query));
    } catch (SourceException refused) {
      failure = refused;
      return false;
    }
    LockSupport.parkNanos(PAUSE_NANOS);
    return true;
  }

  /** The next reading in amps or volts, or null if none has come since. */
  public Double poll() {
    return readings.poll();
  }

  /** Why it has ended, or null. */
  public RuntimeException failure() {
    return failure;
  }

  /** How many readings had to be asked for again, for people; empty if none. */
  public String repeats() {
    return meter.askedAgain() == 0
        ? ""
        : meter.askedAgain() + " of " + meter.asked() + " answers were none and asked for again";
  }

  @Override
  public void close() {
    meter.close();
  }
}
