package org.boothlamp.monitor;

import org.boothlamp.health.HealthFault;

/** What can happen to a booth besides welding. The word is stored in the log: never change one. */
public enum EventKind {
  /** The monitor was started. */
  STARTED("started", false),
  /** The monitor was stopped in order. */
  STOPPED("stopped", false),
  /** A trainee signed in, or out with an empty code. */
  SIGNED_IN("signed in", false),
  /** A sign-in names a procedure that cannot be loaded. */
  SIGN_IN_REFUSED("sign-in refused", false),
  /** A badge that nobody is known by; the detail has its end only. */
  UNKNOWN_BADGE("unknown badge", false),
  /** No badge could be read: the reader was not there. */
  BADGE_READER_LOST("badge reader lost", false),
  /** A channel measures by its nominal scale: no calibration counts. */
  CALIBRATION_MISSING("calibration missing", false),
  /** A channel's calibration is past its due date; U is widened. */
  CALIBRATION_OVERDUE("calibration overdue", false),
  /** A channel measures by another calibration from here on. */
  CALIBRATION_TAKEN_UP("calibration taken up", false),
  /** The calibration that a channel measured by was withdrawn. */
  CALIBRATION_WITHDRAWN("calibration withdrawn", false),
  /** The source delivered nothing for longer than it may. */
  NO_SAMPLES("no samples", true),
  /** Pairs that were sent and never arrived. */
  LOST_PAIRS("lost pairs", false),
  /** Frames that failed their check. */
  BAD_FRAMES("bad frames", false),
  /** The line was opened again after it had failed. */
  RECONNECTED("reconnected", false),
  /** The source changed its rate or range. */
  FORMAT_CHANGED("format changed", false),
  /** The current runs the other way than the procedure asks. */
  WRONG_POLARITY(HealthFault.WRONG_POLARITY),
  /** Counts at the end of the converter's range. */
  CLIPPED(HealthFault.CLIPPED),
  /** The current does not move by a count while it flows. */
  FROZEN_CURRENT(HealthFault.FROZEN_CURRENT),
  /** The voltage does not move by a count while current flows. */
  FROZEN_VOLTAGE(HealthFault.FROZEN_VOLTAGE),
  /** Current flows and there is no voltage. */
  AMPS_WITHOUT_VOLTS(HealthFault.AMPS_WITHOUT_VOLTS),
  /** An arc's voltage and no current. */
  VOLTS_WITHOUT_AMPS(HealthFault.VOLTS_WITHOUT_AMPS),
  /** Current and voltage have opposite directions. */
  SENSORS_DISAGREE(HealthFault.SENSORS_DISAGREE),
  /** The clamp shows current where none flows. */
  ZERO_DRIFT(HealthFault.ZERO_DRIFT),
  /** Noise or mains hum. */
  NOISE(HealthFault.NOISE),
  /** More than a tenth of the pairs did not arrive. */
  GAPS(HealthFault.GAPS),
  /** Pairs come faster or slower than the source says. */
  SAMPLE_RATE(HealthFault.SAMPLE_RATE),
  /** The front end's clock runs away from this computer's. */
  CLOCK_DRIFT(HealthFault.CLOCK_DRIFT),
  /** How evenly the pairs are taken: told after the start and every hour. */
  SAMPLING("sampling", false),
  /** The rate asked for was not held: pairs were never taken. */
  RATE_NOT_HELD("rate not held", false),
  /** The log's queue was full: entries were lost. */
  LOG_QUEUE_FULL("log queue full", false),
  /** The log could not be written for a while. */
  LOG_STALLED("log stalled", false),
  /** Raw recordings can no longer be kept: no room, or the disk refuses. */
  RECORDINGS_STOPPED("recordings stopped", false),
  /** Raw recordings are kept again. */
  RECORDINGS_RESUMED("recordings resumed", false),
  /** Pairs are missing in a raw recording because the disk was too slow. */
  RECORDING_GAP("recording gap", false),
  /** The local page could not be opened: its address is taken, or a file of it cannot be used. */
  PAGE_NOT_OPEN("page not open", false),
  /** The log's disk was full for a while. */
  DISK_FULL("disk full", false),
  /** The log was damaged and set aside; a new one was begun. */
  LOG_DAMAGED("log damaged", false),
  /** What could be read of a damaged log is in the new one. */
  LOG_SALVAGED("log salvaged", false),
  /** The time of day became known, or was put right: all rows of this start follow. */
  CLOCK_SET("clock set", false),
  /** The machine's clock jumped without a reason; it was not followed. */
  CLOCK_STEPPED("clock stepped", false),
  /** Rows that were older than they may become are gone. */
  OLD_ROWS_DELETED("old rows deleted", false),
  /** A segment was running when the power went; closed at the next start. */
  POWER_LOSS("power loss", false);

  private final String word;
  private final boolean fault;

  EventKind(HealthFault fault) {
    this(fault.word(), true);
  }

  EventKind(String word, boolean fault) {
    this.word = word;
    this.fault = fault;
  }

  /** The word stored in the log and shown to people. */
  public String word() {
    return word;
  }

  /** True if the lamp is in fault while this lasts. */
  public boolean isFault() {
    return fault;
  }

  /** The event of a fault of the sensors. */
  public static EventKind of(HealthFault fault) {
    return switch (fault) {
      case CLIPPED -> CLIPPED;
      case FROZEN_CURRENT -> FROZEN_CURRENT;
      case FROZEN_VOLTAGE -> FROZEN_VOLTAGE;
      case AMPS_WITHOUT_VOLTS -> AMPS_WITHOUT_VOLTS;
      case VOLTS_WITHOUT_AMPS -> VOLTS_WITHOUT_AMPS;
      case WRONG_POLARITY -> WRONG_POLARITY;
      case SENSORS_DISAGREE -> SENSORS_DISAGREE;
      case ZERO_DRIFT -> ZERO_DRIFT;
      case NOISE -> NOISE;
      case GAPS -> GAPS;
      case SAMPLE_RATE -> SAMPLE_RATE;
      case CLOCK_DRIFT -> CLOCK_DRIFT;
    };
  }
}
