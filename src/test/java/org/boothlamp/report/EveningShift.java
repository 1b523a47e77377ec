package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * An invented evening in booth B-07: T-04 welds fill and cap, T-11 has the machine too hot and a
 * lead the wrong way round, somebody welds without signing in, T-15 only scratches.
 */
final class EveningShift {

  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  static final ShiftSpan SPAN = ShiftSpan.today(LocalDate.of(2026, 3, 25), ZONE);

  private static final List<ShiftHours> HOURS =
      List.of(
          new ShiftHours("morning", LocalTime.of(7, 0), LocalTime.of(12, 0)),
          new ShiftHours("evening", LocalTime.of(17, 30), LocalTime.of(21, 30)));

  private EveningShift() {}

  static ZonedDateTime at(int hour, int minute, int second) {
    return ZonedDateTime.of(2026, 3, 25, hour, minute, second, 0, ZONE);
  }

  static ShiftReport report() {
    return ShiftReport.of(records(), SPAN, "B-07", "Evening class");
  }

  static ShiftRecords records() {
    return new ShiftRecords(runs(), touches(), events());
  }

  /** The evening's hours, who was signed in when, and how the days before had gone. */
  static Glance glance() {
    ShiftTime shift = ShiftTime.of(records(), SPAN, HOURS, SPAN.untilWallMillis());
    return Glance.of(report(), new Glance.Beside(shift, signIns(), earlier()));
  }

  private static List<SignInMoment> signIns() {
    return List.of(
        new SignInMoment("B-07", millis(17, 25), "T-04"),
        new SignInMoment("B-07", millis(18, 5), "T-11"),
        new SignInMoment("B-07", millis(18, 30), ""),
        new SignInMoment("B-07", millis(19, 20), "T-15"),
        new SignInMoment("B-07", millis(19, 35), ""));
  }

  private static long millis(int hour, int minute) {
    return at(hour, minute, 0).toInstant().toEpochMilli();
  }

  /** Three days of T-04 on the fill pass, 8 runs each, 70, 75 and 80 % in the window. */
  private static List<EarlierRun> earlier() {
    List<EarlierRun> earlier = new ArrayList<>();
    for (int day = 0; day < 3; day++) {
      for (int i = 0; i < 8; i++) {
        long start = at(18, i, 0).minusDays(7 - day).toInstant().toEpochMilli();
        earlier.add(
            new EarlierRun("T-04", "S-3F-18", "2", "fill", start, 20 * (0.70 + 0.05 * day), 20));
      }
    }
    return earlier;
  }

  static List<RunRecord> runs() {
    return List.of(
        // measured for 20 s
        run()
            .id(1)
            .at(at(17, 31, 5))
            .length(20)
            .means(110, 22)
            .energy(48_600)
            .levels(15, 2.5, 1.5, 1)
            .excursion(Quantity.VOLTS, Side.HIGH, 4, 0.9, 27.1)
            .excursion(Quantity.VOLTS, Side.HIGH, 9, 0.6, 28.9)
            .arcOuts(2)
            .build(),
        // measured for 38 of 40 s
        run()
            .id(2)
            .at(at(17, 40, 0))
            .length(40)
            .means(120, 25)
            .energy(115_000)
            .levels(20, 10, 7, 1)
            .missing(2)
            .excursion(Quantity.VOLTS, Side.HIGH, 11, 4, 27.5)
            .excursion(Quantity.AMPS, Side.LOW, 30, 3, 91.2)
            .build(),
        run()
            .id(3)
            .at(at(17, 55, 30))
            .pass("S-3F-18", "2", "cap", new Window(Quantity.AMPS, 85, 115))
            .length(90)
            .means(104.5, 23)
            .energy(216_000)
            .levels(89, 0, 0, 1)
            .build(),
        run()
            .id(4)
            .at(at(18, 10, 0))
            .trainee("T-11")
            .means(141.26, 21)
            .energy(29_700)
            .levels(0, 0, 9, 1)
            .shortCircuits(-1)
            .excursion(Quantity.AMPS, Side.HIGH, 1, 9, 146)
            .uncalibrated()
            .build(),
        run()
            .id(5)
            .at(at(18, 12, 0))
            .trainee("T-11")
            .levels(0, 0, 0, 1)
            .fault(9)
            .end("power loss")
            .build(),
        run().id(6).at(at(19, 0, 0)).trainee("").noProcedure().build());
  }

  static List<TouchRecord> touches() {
    return List.of(
        new TouchRecord("T-04", at(17, 31, 0).toInstant().toEpochMilli(), 5, 0.1, false),
        new TouchRecord("T-04", at(17, 31, 2).toInstant().toEpochMilli(), 7, 0.9, true),
        new TouchRecord("T-15", at(19, 30, 0).toInstant().toEpochMilli(), 7_200, 0.2, false));
  }

  static List<EventRecord> events() {
    return List.of(
        event("started", false, at(17, 30, 0), 0, 0, ""),
        event("no samples", true, at(17, 40, 10), 2, 0, ""),
        event("lost pairs", false, at(17, 40, 12), 0, 10_000, "front end FE-2"),
        event("lost pairs", false, at(18, 1, 0), 0, 5, "front end FE-2"),
        event("wrong polarity", true, at(18, 12, 1), 9, 0, ""),
        event("power loss", false, at(18, 12, 10), 0, 0, ""));
  }

  static EventRecord event(
      String what, boolean fault, ZonedDateTime start, double seconds, long count, String detail) {
    return new EventRecord(
        what, fault, start.toInstant().toEpochMilli(), 0, seconds, count, detail);
  }
}
