package org.boothlamp.app;

import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.SensorInUse;
import org.boothlamp.calibration.SensorsInUse;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.monitor.EventKind;

/**
 * Follows which calibrations the booth measures by, and writes down what changed. Confined to one
 * thread: the boothlog's, once the booth runs.
 */
final class CalibrationDesk {

  private final Function<CalibrationHistory, SensorsInUse> pick;
  private final Consumer<SensorsInUse> onChange;
  private final BiConsumer<EventKind, String> notes;
  private SensorsInUse now;
  private boolean begun;

  /**
   * A desk at the start of a booth.
   *
   * @param first what the booth begins with
   * @param pick what holds at this moment, out of all calibrations
   * @param onChange told when something else holds
   * @param notes where events go, with their detail
   */
  CalibrationDesk(
      SensorsInUse first,
      Function<CalibrationHistory, SensorsInUse> pick,
      Consumer<SensorsInUse> onChange,
      BiConsumer<EventKind, String> notes) {
    this.now = first;
    this.pick = pick;
    this.onChange = onChange;
    this.notes = notes;
  }

  private void begin() {
    begun = true;
    for (Channel channel : Channel.values()) {
      noteState(now.of(channel));
    }
  }

  private void noteState(SensorInUse sensor) {
    switch (sensor.state()) {
      case OK -> {
        // nothing to say
      }
      case OVERDUE -> notes.accept(EventKind.CALIBRATION_OVERDUE, sensor.words());
      case MISSING -> notes.accept(EventKind.CALIBRATION_MISSING, sensor.words());
    }
  }

  /**
   * Takes up what holds now, if it is something else than before. The first call also writes down
   * what is not as it should be at the start.
   */
  void follow(CalibrationHistory history) {
    if (!begun) {
      begin();
    }
    SensorsInUse next = pick.apply(history);
    if (next.equals(now)) {
      return;
    }
    for (Channel channel : Channel.values()) {
      if (!next.of(channel).equals(now.of(channel))) {
        noteChange(now.of(channel), next.of(channel), history);
      }
    }
    now = next;
    onChange.accept(next);
  }

  private void noteChange(SensorInUse before, SensorInUse after, CalibrationHistory history) {
    CalibrationRecord old = history.find(before.number());
    if (before.number() != after.number() && old != null && old.withdrawal() != null) {
      notes.accept(EventKind.CALIBRATION_WITHDRAWN, withdrawn(old));
    }
    if (after.isCalibrated() && isNews(before, after)) {
      notes.accept(EventKind.CALIBRATION_TAKEN_UP, after.words());
    }
    noteState(after);
  }

  /** Another calibration, or one that was overdue by a clock that was wrong. */
  private static boolean isNews(SensorInUse before, SensorInUse after) {
    return before.number() != after.number() || after.state() == SensorInUse.State.OK;
  }

  private static String withdrawn(CalibrationRecord record) {
    Withdrawal withdrawal = record.withdrawal();
    return record.channel().word()
        + ": calibration "
        + record.number()
        + " withdrawn by "
        + withdrawal.technicianCode()
        + ": "
        + withdrawal.reason();
  }
}
