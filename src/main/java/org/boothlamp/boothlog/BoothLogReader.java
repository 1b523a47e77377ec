package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.Channel;
import org.boothlamp.report.EarlierRun;
import org.boothlamp.report.ReplayChoice;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.RunTrace;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.SignInMoment;
import org.boothlamp.report.WeldReplay;

/**
 * Reads a log without changing it: beside the monitor that writes it, alone, or on a read-only
 * medium. Confined to one thread at a time.
 */
public final class BoothLogReader implements AutoCloseable {

  private static final String LATEST_SIGN_IN =
      "SELECT " + SignIn.COLUMNS + " FROM sign_in ORDER BY id DESC LIMIT 1";

  private static final String COUNTS =
      "SELECT (SELECT count(*) FROM boot), (SELECT count(*) FROM segment),"
          + " (SELECT count(*) FROM segment WHERE end_word IS NULL),"
          + " (SELECT count(*) FROM excursion), (SELECT count(*) FROM touch),"
          + " (SELECT count(*) FROM event), (SELECT count(*) FROM sign_in)";

  private static final String COLLECTED =
      "SELECT count(*) FROM sqlite_schema WHERE name = 'collected_row'";

  @FunctionalInterface
  private interface Reading<T> {
    T from(LogConnection log) throws SQLException;
  }

  private final Path path;
  private final LogConnection log;

  private BoothLogReader(Path path, LogConnection log) {
    this.path = path;
    this.log = log;
  }

  /**
   * Opens a log for reading.
   *
   * @throws BoothLogException if there is no such file, or it is not a log this program can read
   */
  public static BoothLogReader open(Path path) {
    return new BoothLogReader(path, LogFile.openForReading(path));
  }

  /**
   * All that began in a span of time, as of one moment. A segment that still runs is there with the
   * figures of its last save and the end "running".
   *
   * @param fromWallMillis time of day, ms since the epoch, inside
   * @param untilWallMillis likewise, outside
   */
  public ShiftRecords read(long fromWallMillis, long untilWallMillis) {
    return atOneMoment(from -> new ShiftReading(from, fromWallMillis, untilWallMillis).read());
  }

  /**
   * One run, with what was said of it last.
   *
   * @param id row number of its segment, or {@link Beads#LATEST}
   * @throws org.boothlamp.report.BeadRefusedException if there is no such run
   */
  public RunRecord run(long id) {
    return atOneMoment(from -> Beads.find(from, id));
  }

  /**
   * The same with why its figures deserve less trust, if at all: some of it comes from what
   * happened while it was welded.
   *
   * @param zone whose days calibrations are due by
   * @param nowWallMillis time of day, ms since the epoch
   */
  public RunSummary runSummary(long id, ZoneId zone, long nowWallMillis) {
    return atOneMoment(
        from -> {
          RunRecord run = Beads.find(from, id);
          long start = run.startWallMillis();
          return ShiftReport.of(
                  ShiftReading.around(from, run),
                  new ShiftSpan(start, start + 1, zone),
                  "",
                  "",
                  calibrationsOfBooths(from),
                  nowWallMillis,
                  null)
              .allRuns()
              .get(0);
        });
  }

  /** One run; null if there is none. */
  public RunRecord findRun(long segmentId) {
    return atOneMoment(from -> ShiftReading.run(from, segmentId));
  }

  /** The trace of a segment as far as it is saved; null if there is no such segment. */
  public SegmentTrace trace(long segmentId) {
    return atOneMoment(from -> TraceReading.read(from, segmentId));
  }

  /** What a run can be computed again from; null if there is no such segment. */
  public RunTrace runTrace(long segmentId) {
    return atOneMoment(from -> TraceReading.runTrace(from, segmentId));
  }

  /**
   * Who signed in, or out, in a span of time; with the booth in a collected log only.
   *
   * @param fromWallMillis time of day, ms since the epoch, inside
   * @param untilWallMillis likewise, outside
   */
  public List<SignInMoment> signIns(long fromWallMillis, long untilWallMillis) {
    return atOneMoment(
        from ->
            GlanceReading.signIns(
                from, from.number(COLLECTED) > 0, fromWallMillis, untilWallMillis));
  }

  /** What a comparison needs of the judged runs that began in a span of time. */
  public List<EarlierRun> earlierRuns(long fromWallMillis, long untilWallMillis) {
    return atOneMoment(from -> GlanceReading.earlierRuns(from, fromWallMillis, untilWallMillis));
  }

  /** A run to be looked at again, as far as it is saved; null if there is no such segment. */
  public WeldReplay weldReplay(long segmentId) {
    return atOneMoment(from -> ReplayReading.read(from, segmentId));
  }

  /**
   * Other runs of the pass of a run, to lay it beside: reference welds first, then the latest.
   *
   * @param most how many
   */
  public List<ReplayChoice> replayChoices(RunRecord run, int most) {
    return atOneMoment(from -> ReplayReading.choices(from, run, most));
  }

  /** What names a segment outside the log; null if there is no such segment. */
  public SegmentKey segmentKey(long segmentId) {
    return atOneMoment(from -> SegmentKey.read(from, segmentId));
  }

  /** The same of all segments that began in a span of time, by their row number. */
  public Map<Long, SegmentKey> segmentKeys(long fromWallMillis, long untilWallMillis) {
    return atOneMoment(from -> SegmentKey.readAll(from, fromWallMillis, untilWallMillis));
  }

  /** The latest sign-in or sign-out of any day, or null if there is none. */
  public SignIn latestSignIn() {
    return atOneMoment(BoothLogReader::latestSignIn);
  }

  private static SignIn latestSignIn(LogConnection from) throws SQLException {
    try (Columns row = from.bind(LATEST_SIGN_IN).rows()) {
      return row.next() ? SignIn.of(row) : null;
    }
  }

  /** All calibrations, with every point. */
  public CalibrationHistory calibrations() {
    return atOneMoment(from -> CalibrationReading.history(from));
  }

  /** The same, and which booth each is of: also in a log that was collected from several booths. */
  public BoothHistories calibrationsOfBooths() {
    return atOneMoment(BoothLogReader::calibrationsOfBooths);
  }

  private static BoothHistories calibrationsOfBooths(LogConnection from) throws SQLException {
    return from.number(COLLECTED) > 0
        ? CollectedCalibrations.read(from)
        : BoothHistories.alone(CalibrationReading.history(from));
  }

  /** One-point checks of a channel in order of time. */
  public List<CalibrationCheck> calibrationChecks(Channel channel) {
    return atOneMoment(from -> CalibrationReading.checks(from, channel));
  }

  /** How much the log holds. */
  public LogCounts counts() {
    return atOneMoment(BoothLogReader::counts);
  }

  private static LogCounts counts(LogConnection from) throws SQLException {
    try (Columns row = from.bind(COUNTS).rows()) {
      row.next();
      return new LogCounts(
          row.whole(),
          row.whole(),
          row.whole(),
          row.whole(),
          row.whole(),
          row.whole(),
          row.whole());
    }
  }

  private <T> T atOneMoment(Reading<T> reading) {
    try {
      log.execute("BEGIN");
      try {
        return reading.from(log);
      } finally {
        log.execute("COMMIT");
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  @Override
  public void close() {
    try {
      log.close();
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }
}
