package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A daemon that runs while a technician calibrates and withdraws beside it. */
class CalibrationTakeUpIT {

  /** A poll of a quarter of a second, the commit, and a machine that does other things too. */
  private static final double LONGEST_SECONDS = 3;

  @TempDir Path folder;
  private BoothFolder booth;

  @Test
  void shouldTakeUpACalibrationAndItsWithdrawalBesideTheArc() throws Exception {
    booth =
        new BoothFolder(folder).source(BoothFolder.SIMULATED.replace("\"full\"", "\"real-time\""));
    booth.write();
    ChannelScale nominal = BoothSettingsFile.read(booth.settings()).scale().current();
    // Made first: a log in the making cannot be read yet.
    BoothCalibrations.open(booth.log()).close();
    try (DaemonProcess daemon =
        DaemonProcess.start(folder, "run", "--settings", booth.settings())) {
      await(() -> count("calibration missing") == 2, 90);
      try (CalibrationBook book = BoothCalibrations.open(booth.log())) {
        LocalDate today = LocalDate.now();
        long number =
            Calibrations.add(
                book,
                Calibrations.head(Channel.CURRENT, nominal, today),
                Calibrations.accepted(
                    System.currentTimeMillis() - 1,
                    nominal,
                    new ExpandedUncertainty(0.5, 0),
                    today.plusYears(1)));
        await(() -> count("calibration taken up") == 1, LONGEST_SECONDS);
        await(() -> runsUnder(number) > 0, 60);
        long now = System.currentTimeMillis();
        book.withdraw(number, new Withdrawal(now - 1, now, "K-2", "clamp was dropped"));
        await(() -> count("calibration withdrawn") == 1, LONGEST_SECONDS);
        assertEquals(3, count("calibration missing"));
      }
      assertTrue(daemon.isAlive(), daemon.err());
    }
  }

  private ShiftRecords records() {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  private long count(String what) {
    List<EventRecord> events = records().events();
    return events.stream().filter(event -> event.what().equals(what)).count();
  }

  private long runsUnder(long number) {
    return records().runs().stream().filter(run -> run.calibrations().current() == number).count();
  }

  private static void await(BooleanSupplier condition, double longestSeconds)
      throws InterruptedException {
    long begun = System.nanoTime();
    while (!condition.getAsBoolean()) {
      assertTrue((System.nanoTime() - begun) / 1e9 < longestSeconds, "not in time");
      Thread.sleep(50);
    }
  }
}
