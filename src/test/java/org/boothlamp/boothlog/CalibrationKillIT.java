package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a process that calibrates, and lets two calibrate at once. */
class CalibrationKillIT {

  private static final int KILLS = 8;
  private static final long SEED = 20_260_302;

  @TempDir Path folder;

  @Test
  void shouldKeepEveryPointThatWasAcknowledged() throws Exception {
    Path path = folder.resolve(BoothLog.FILE_NAME);
    Random random = new Random(SEED);
    for (int kill = 0; kill < KILLS; kill++) {
      long acknowledged = calibrateAndKill(path, 50 + random.nextInt(400));
      try (LogConnection log = LogFile.openForReading(path)) {
        assertEquals("ok", log.text("PRAGMA integrity_check"));
        assertEquals(0, log.number("SELECT count(*) FROM pragma_foreign_key_check"));
      }
      List<CalibrationRecord> records = records(path);
      assertEquals(kill + 1, records.size());
      CalibrationRecord last = records.get(kill);
      assertTrue(last.isUnderWay());
      assertTrue(last.points().size() >= acknowledged, "points in the file");
      assertTrue(last.points().size() <= acknowledged + 1, "points in the file");
      for (int i = 0; i < last.points().size(); i++) {
        assertEquals(pointOf(i), last.points().get(i));
      }
    }
  }

  private static long calibrateAndKill(Path path, long millis) throws Exception {
    Process process = ChildJvm.start(Calibrating.class, path, Integer.MAX_VALUE);
    try (BufferedReader output =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      String last = output.readLine();
      assertNotNull(last, "the process ended by itself");
      Thread.sleep(millis);
      process.toHandle().destroyForcibly();
      for (String line = last; line != null; line = output.readLine()) {
        last = line;
      }
      assertTrue(process.waitFor(10, TimeUnit.SECONDS));
      return Long.parseLong(last);
    }
  }

  @Test
  void shouldTakePointsOfTwoProcessesAtOnceBesideAMonitor() throws Exception {
    Path path = folder.resolve("two.db");
    try (RunningLog monitor = new RunningLog(path)) {
      List<Process> processes = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        processes.add(ChildJvm.start(Calibrating.class, path, 40));
      }
      for (Process process : processes) {
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue());
      }
      assertEquals(List.of(), monitor.errors);
    }
    List<CalibrationRecord> records = records(path);
    assertEquals(List.of(1L, 2L), records.stream().map(CalibrationRecord::number).toList());
    for (CalibrationRecord record : records) {
      assertEquals(40, record.points().size());
      assertEquals(pointOf(39), record.points().get(39));
    }
  }

  private static List<CalibrationRecord> records(Path path) {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.calibrations().records();
    }
  }

  private static CalibrationPoint pointOf(int index) {
    return Calibrations.point(index, index % 2 == 0 ? Direction.RISING : Direction.FALLING);
  }

  /** The process: takes so many points and tells after each how many it has. */
  static final class Calibrating {

    private Calibrating() {}

    public static void main(String[] arguments) {
      try (CalibrationBook book = BoothCalibrations.open(Path.of(arguments[0]))) {
        ChannelScale nominal = new ChannelScale(0.2, 2048);
        long number =
            book.begin(Calibrations.head(Channel.CURRENT, nominal, LocalDate.of(2026, 3, 2)));
        int most = Integer.parseInt(arguments[1]);
        for (int i = 0; i < most; i++) {
          book.addPoint(number, pointOf(i));
          System.out.println(i + 1);
        }
      }
    }
  }
}
