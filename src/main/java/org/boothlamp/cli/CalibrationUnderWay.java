package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.Calibration;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.monitor.WallClock;

/**
 * A calibration under way: what is in the book, and the same in hand. Every change is in the book
 * before it is in hand. Confined to one thread.
 */
final class CalibrationUnderWay {

  private final CalibrationBook book;
  private final WallClock clock;
  private final long number;
  private final CalibrationHead head;
  private final List<CalibrationPoint> points;
  private boolean ended;

  private CalibrationUnderWay(
      CalibrationBook book,
      WallClock clock,
      long number,
      CalibrationHead head,
      List<CalibrationPoint> points) {
    this.book = book;
    this.clock = clock;
    this.number = number;
    this.head = head;
    this.points = new ArrayList<>(points);
  }

  /** A new one. */
  static CalibrationUnderWay begin(CalibrationBook book, WallClock clock, CalibrationHead head) {
    return new CalibrationUnderWay(book, clock, book.begin(head), head, List.of());
  }

  /** One that was left, or cut off. */
  static CalibrationUnderWay resume(
      CalibrationBook book, WallClock clock, CalibrationRecord record) {
    return new CalibrationUnderWay(book, clock, record.number(), record.head(), record.points());
  }

  long number() {
    return number;
  }

  CalibrationHead head() {
    return head;
  }

  /** As taken, thrown-away ones included. */
  List<CalibrationPoint> points() {
    return List.copyOf(points);
  }

  void take(CalibrationPoint point) {
    book.addPoint(number, point);
    points.add(point);
  }

  /** True once it is finished or given up. */
  boolean hasEnded() {
    return ended;
  }

  /** Index of the last point that is used, or -1. */
  int lastUsed() {
    int last = points.size() - 1;
    while (last >= 0 && points.get(last).isDiscarded()) {
      last--;
    }
    return last;
  }

  void discard(int index, String reason) {
    book.discard(number, index, reason);
    points.set(index, points.get(index).discarded(reason));
  }

  CalibrationOutcome evaluate() {
    return Calibration.evaluate(head.run(points), head.inUse(), head.rules());
  }

  void finish(CalibrationOutcome outcome) {
    book.finish(number, CalibrationFinish.of(outcome, clock.epochMillis()));
    ended = true;
  }

  void abandon(String reason) {
    book.finish(number, CalibrationFinish.abandoned(clock.epochMillis(), reason));
    ended = true;
  }
}
