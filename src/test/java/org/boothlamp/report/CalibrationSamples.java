package org.boothlamp.report;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.signal.ChannelScale;

/** Invented calibrations of a booth, for pages and commands to show. */
public final class CalibrationSamples {

  public static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  public static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  public static final LocalDate LATER = LocalDate.of(2026, 11, 20);

  private static final ChannelScale CLAMP = new ChannelScale(0.2, 2048);
  private static final double[] NOISE = {0.21, -0.34, 0.12, -0.05, 0.27, -0.18, 0.08, -0.24, 0.16};

  private CalibrationSamples() {}

  static long millis(LocalDate day, int hour, int minute) {
    return day.atTime(LocalTime.of(hour, minute)).atZone(ZONE).toInstant().toEpochMilli();
  }

  static ReferenceMeter meter(String make) {
    return new ReferenceMeter(make, "M-104", "C-2025-77", LocalDate.of(2025, 11, 4), 0.1, 3, 0.1);
  }

  static CalibrationHead head(String technician, ReferenceMeter meter) {
    return new CalibrationHead(
        "B-07",
        Channel.CURRENT,
        CLAMP,
        400,
        DAY,
        millis(DAY, 9, 12),
        technician,
        meter,
        CLAMP,
        0,
        CalibrationRules.STANDARD);
  }

  /** Levels in equal steps up and down, small scatter, 0.3 A between the ways. */
  static List<CalibrationPoint> points(int levels, DoubleUnaryOperator shown) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < 2 * levels; i++) {
      int level = i < levels ? i : 2 * levels - 1 - i;
      Direction way = i < levels ? Direction.RISING : Direction.FALLING;
      double amps = 400.0 * level / (levels - 1);
      double loop = way == Direction.RISING ? -0.15 : 0.15;
      double counts = CLAMP.toCount(shown.applyAsDouble(amps) + loop + NOISE[i % NOISE.length]);
      points.add(new CalibrationPoint(amps, way, counts, 2.6, 50_000, 0.3, amps, null));
    }
    return points;
  }

  /** A sound clamp: 4 % too low, 3 A too high; one point was repeated. */
  static List<CalibrationPoint> soundPoints() {
    List<CalibrationPoint> points = points(6, amps -> amps / 1.04 + 3);
    CalibrationPoint early = points.get(3);
    points.add(
        3,
        new CalibrationPoint(
                early.level(),
                early.direction(),
                early.meanCounts() - 31,
                9.8,
                50_000,
                -22,
                early.reference(),
                null)
            .discarded("load bank was still warming up"));
    return points;
  }

  /** The meter shows an overload. */
  static CalibrationPoint overload() {
    return new CalibrationPoint(80, Direction.RISING, 2445, 2.6, 50_000, 0.3, 9.9e37, null);
  }

  /** Signed with a scale half a per cent off what the points give. */
  static CalibrationRecord tampered() {
    CalibrationRecord sound = accepted();
    CalibrationFinish finish = sound.finish();
    ChannelScale scale =
        new ChannelScale(1.005 * finish.scale().unitsPerCount(), finish.scale().zeroCount());
    return new CalibrationRecord(
        7,
        sound.head(),
        sound.points(),
        new CalibrationFinish(
            finish.ending(),
            finish.wallMillis(),
            scale,
            finish.uncertainty(),
            finish.nextDue(),
            ""),
        null);
  }

  static CalibrationRecord ended(
      long number, CalibrationHead head, List<CalibrationPoint> points, Withdrawal withdrawal) {
    CalibrationRecord open = new CalibrationRecord(number, head, points, null, null);
    CalibrationFinish finish = CalibrationFinish.of(open.evaluate(), millis(DAY, 10, 4));
    return new CalibrationRecord(number, head, points, finish, withdrawal);
  }

  public static CalibrationRecord accepted() {
    return ended(7, head("K2", meter("bench multimeter, six digits")), soundPoints(), null);
  }

  /** Saturates above 300 A. */
  public static CalibrationRecord refused() {
    List<CalibrationPoint> points =
        points(6, amps -> amps < 300 ? amps : amps - (amps - 300) * (amps - 300) / 1_500);
    return ended(8, head("K2", meter("bench multimeter, six digits")), points, null);
  }

  public static CalibrationRecord withdrawn() {
    Withdrawal withdrawal =
        new Withdrawal(
            millis(LocalDate.of(2026, 6, 1), 7, 0),
            millis(LocalDate.of(2026, 6, 15), 8, 30),
            "K5",
            "the clamp was dropped and its jaw does not close");
    return ended(9, head("K2", meter("bench multimeter, six digits")), soundPoints(), withdrawal);
  }

  /** Monthly, the first five before the sample calibrations, with a slow drift. */
  public static List<CalibrationCheck> checks() {
    List<CalibrationCheck> checks = new ArrayList<>();
    for (int month = 0; month < 14; month++) {
      boolean before = month < 5;
      LocalDate day = LocalDate.of(2025, 10, 6).plusMonths(month);
      double error = before ? 1.4 + NOISE[month % 9] : 0.13 * (month - 5) + 0.4 * NOISE[month % 9];
      checks.add(
          new CalibrationCheck(
              Channel.CURRENT,
              before ? 3 : 7,
              millis(day, 7, 40),
              "K2",
              "clamp meter",
              100,
              100 + error,
              0.4,
              50_000,
              before ? 1.6 : 1.1));
    }
    return checks;
  }

  static CalibrationSheet sheet(CalibrationRecord record) {
    return new CalibrationSheet(record, checks(), ZONE, LATER);
  }

  static CalibrationSheet bare(CalibrationRecord record) {
    return new CalibrationSheet(record, List.of(), ZONE, LATER);
  }
}
