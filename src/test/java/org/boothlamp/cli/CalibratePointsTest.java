package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationFinish.Ending;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Direction;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A calibration from a file of points, without a person. */
class CalibratePointsTest {

  @TempDir Path folder;
  private CalibrateBench bench;

  @BeforeEach
  void setUp() {
    bench = new CalibrateBench(folder);
  }

  private CommandRun calibrate(Path points, Object... more) {
    return bench.run("current", "--points", points, CalibrateBench.meter(), List.of(more));
  }

  @Test
  void shouldFindGainAndZeroOfTheClamp() {
    CommandRun run = calibrate(bench.soundPoints(), "--accept").exits(0);
    CalibrationRecord record = bench.only();
    assertTrue(record.isAccepted());
    assertEquals(9, record.points().size());
    ChannelScale nominal = record.head().nominal();
    for (double amps = 0; amps <= 500; amps += 50) {
      double read = record.finish().scale().toUnits(nominal.toCount(1.04 * amps + 3));
      assertEquals(amps, read, record.finish().uncertainty().at(amps));
      assertEquals(amps, read, 0.05);
    }
    assertTrue(run.out().contains("as found  "), run.out());
    assertTrue(run.out().contains("is accepted"), run.out());
    assertEquals("", run.err());
  }

  @Test
  void shouldKeepWhatIsKnownOfThePoint() {
    calibrate(bench.soundPoints(), "--accept").exits(0);
    CalibrationPoint point = bench.only().points().get(1);
    assertEquals(125, point.level());
    assertEquals(Direction.RISING, point.direction());
    assertEquals((1.04 * 125 + 3) / CalibrateBench.AMPS_PER_COUNT, point.meanCounts(), 0.1);
    assertEquals(10_000, point.readings());
    assertEquals(0.85, point.standardDeviationCounts(), 0.1);
    assertTrue(Math.abs(point.driftCounts()) < 1);
    assertNull(point.discardReason());
    assertEquals("K-2", bench.only().head().technicianCode());
    assertEquals("bench meter", bench.only().head().meter().make());
  }

  @Test
  void shouldCalibrateTheVoltageToo() {
    Path points =
        bench.points(
            "0,rising,0",
            "12.5,rising,12.5",
            "25,rising,25",
            "37.5,rising,37.5",
            "50,rising,50",
            "37.5,falling,37.5",
            "25,falling,25",
            "12.5,falling,12.5",
            "0,falling,0");
    bench
        .run("voltage", "--points", points, CalibrateBench.meter(), "--resolution=0.01", "--accept")
        .exits(2);
    bench
        .run(
            "voltage",
            "--points",
            points,
            CalibrateBench.meter().subList(0, 14),
            "--resolution=0.01",
            "--accept")
        .exits(0);
    assertTrue(bench.only().isAccepted());
  }

  @Test
  void shouldLeaveItUnderWayWithoutAcceptAndAcceptItLater() {
    CommandRun first = calibrate(bench.soundPoints()).exits(0);
    assertTrue(first.out().contains("--resume --accept"), first.out());
    assertTrue(bench.only().isUnderWay());
    calibrate(bench.soundPoints(), "--resume", "--accept").exits(0);
    assertTrue(bench.only().isAccepted());
    assertEquals(9, bench.only().points().size());
  }

  @Test
  void shouldAskWhatToDoWithTheOneUnderWay() {
    calibrate(bench.soundPoints()).exits(0);
    CommandRun again = calibrate(bench.soundPoints(), "--accept").exits(2);
    assertTrue(again.err().contains("calibration 1 of the current sensor is under way"));
    assertTrue(again.err().contains("--resume, or give it up with --abandon REASON"), again.err());
    assertTrue(bench.only().isUnderWay());
  }

  @Test
  void shouldGiveUpTheOneUnderWayWithItsReason() {
    calibrate(bench.soundPoints()).exits(0);
    calibrate(bench.soundPoints(), "--accept", "--abandon", "wrong range").exits(0);
    CalibrationRecord first = bench.book.history().find(1);
    assertEquals(Ending.ABANDONED, first.finish().ending());
    assertEquals("wrong range", first.finish().note());
    assertEquals(9, first.points().size());
    assertTrue(bench.book.history().find(2).isAccepted());
  }

  @Test
  void shouldGoOnWhereItWasCutOff() {
    Path cut = bench.points("0,rising,0", "125,rising,125", "250,rising,250000");
    CommandRun first = calibrate(cut).exits(1);
    assertTrue(first.err().contains("kept with 2 points: go on with --resume"), first.err());
    CalibrationRecord before = bench.only();
    CommandRun rest = calibrate(bench.soundPoints(), "--resume", "--accept").exits(0);
    assertFalse(rest.out().contains("set 125 A, rising"), rest.out());
    assertTrue(rest.out().contains("set 250 A, rising"), rest.out());
    assertEquals(before.points(), bench.only().points().subList(0, 2));
    assertEquals(9, bench.only().points().size());
  }

  @Test
  void shouldNotGoOnWithAnotherFile() {
    calibrate(bench.soundPoints()).exits(0);
    Path other = bench.points("0,rising,0", "100,rising,100");
    CommandRun run = calibrate(other, "--resume").exits(2);
    assertTrue(run.err().contains("has 9 points and the file 2"), run.err());
    bench.book.finish(1, CalibrationFinish.abandoned(1, "test"));
    calibrate(bench.points("0,rising,0", "90,rising,90000")).exits(1);
    CommandRun differs = calibrate(bench.points("5,rising,5"), "--resume").exits(2);
    assertTrue(differs.err().contains("line 2 is not point 1"), differs.err());
  }

  @Test
  void shouldRefuseAUnitSlipUnlessTheRowConfirmsIt() {
    CommandRun run = calibrate(bench.points("0,rising,0", "125,rising,124300")).exits(1);
    assertTrue(run.err().contains("line 3: the reference says 124300 A"), run.err());
    assertTrue(run.err().contains("is it in mA?"), run.err());
    assertEquals(1, bench.only().points().size());
    Path confirmed =
        bench.file(
            "confirmed.csv",
            "level,direction,reference,confirmed",
            "0,rising,0,",
            "125,rising,124300,yes");
    CommandRun refused = calibrate(confirmed, "--resume").exits(1);
    assertEquals(124_300, bench.only().points().get(1).reference());
    assertTrue(refused.err().contains("is refused"), refused.err());
  }

  @Test
  void shouldKeepARefusedOneWithAllItsReasons() {
    CommandRun run =
        calibrate(bench.points("0,rising,0", "100,rising,100", "200,rising,200"), "--accept")
            .exits(1);
    CalibrationRecord record = bench.only();
    assertEquals(Ending.REFUSED, record.finish().ending());
    assertTrue(record.finish().note().contains("5 different levels"), record.finish().note());
    assertTrue(record.finish().note().contains("span at least 400 A"), record.finish().note());
    assertTrue(run.out().contains("refused   at least 5 different levels"), run.out());
    assertTrue(run.out().contains("span at least 400 A"), run.out());
  }

  @Test
  void shouldKeepAPointThatIsThrownAwayInTheFile() {
    Path points =
        bench.file(
            "points.csv",
            "level,direction,reference,discard_reason",
            "0,rising,0,",
            "125,rising,131.5,\"lead slipped, \"\"badly\"\"\"",
            "125,rising,125,",
            "250,rising,250,",
            "375,rising,375,",
            "500,rising,500,",
            "375,falling,375,",
            "250,falling,250,",
            "125,falling,125,",
            "0,falling,0,");
    calibrate(points, "--accept").exits(0);
    assertEquals("lead slipped, \"badly\"", bench.only().points().get(1).discardReason());
    assertTrue(bench.only().isAccepted());
  }

  @Test
  void shouldSayWhereACommaStandsForAPoint() {
    CommandRun run = calibrate(bench.points("0,rising,0", "125,rising,\"124,3\"")).exits(2);
    assertTrue(run.err().contains("points.csv, line 3, column reference: \"124,3\""), run.err());
    assertTrue(run.err().contains("did you mean 124.3?"), run.err());
    CommandRun bare = calibrate(bench.points("0,rising,0", "125,rising,124,3")).exits(2);
    assertTrue(bare.err().contains("line 3: has 4 fields and the header 3"), bare.err());
    assertEquals(List.of(), bench.book.history().records());
  }

  @Test
  void shouldKeepTheMonitorOut() {
    try (BoothLog monitor = BoothLog.open(bench.booth.log())) {
      CommandRun run = calibrate(bench.soundPoints()).exits(1);
      assertTrue(run.err().contains("the monitor runs"), run.err());
      assertTrue(run.err().contains("systemctl stop boothlamp"), run.err());
      assertEquals(bench.booth.log(), monitor.path());
    }
    calibrate(bench.soundPoints()).exits(0);
  }

  @Test
  void shouldNameEveryOptionThatIsMissing() {
    CommandRun run = bench.run("current", "--points", bench.soundPoints()).exits(2);
    assertTrue(
        run.err().contains("--meter-make, --meter-serial, --certificate, --certificate-date"));
    assertTrue(run.err().contains("--resolution, --technician"), run.err());
  }

  @Test
  void shouldAskForTheSensorsFullScale() {
    bench.booth.extra("").write();
    CommandRun run = calibrate(bench.soundPoints()).exits(2);
    assertTrue(run.err().contains("current_full_scale_a = 500"), run.err());
  }

  @Test
  void shouldGiveUpALoadThatNeverComesToRest() {
    bench.load.drifting(0.001);
    CommandRun run = calibrate(bench.soundPoints(), "--patience", "40").exits(1);
    assertTrue(run.err().contains("line 2: level 0 A was waited for longer"), run.err());
    assertTrue(run.err().contains("the level drifts by"), run.err());
    assertEquals(0, bench.only().points().size());
  }

  @Test
  void shouldNotTakeALevelThatNobodySetForTheNext() {
    bench.leaveTheLoadAlone();
    bench.load.amps(100);
    Path points = bench.points("100,rising,100", "130,rising,130");
    CommandRun run = calibrate(points, "--patience", "30").exits(1);
    assertTrue(run.err().contains("line 3: level 130 A"), run.err());
    assertTrue(run.err().contains("within 15 A of it and shows 107 A"), run.err());
    assertEquals(1, bench.only().points().size());
  }

  @Test
  void shouldHoldThePresentScaleAgainstTheClassAsFound() {
    calibrate(bench.soundPoints(), "--accept").exits(0);
    calibrate(bench.soundPoints(), "--accept").exits(0);
    CalibrationRecord second = bench.book.history().find(2);
    assertEquals(1, second.head().inUseNumber());
    assertEquals(bench.book.history().find(1).finish().scale(), second.head().inUse());
  }

  @Test
  void shouldRefuseASlippedDecimalCommaInAnOption() {
    CommandRun run = calibrate(bench.soundPoints(), "--patience", "1,5").exits(2);
    assertTrue(run.err().contains("did you mean 1.5?"), run.err());
  }

  @Test
  void shouldNeedTheUncertaintyOfAShunt() {
    CommandRun run = calibrate(bench.soundPoints(), "--meter-scale", "10000").exits(2);
    assertTrue(run.err().contains("--meter-scale-percent"), run.err());
  }

  @Test
  void shouldNoteTheShuntInTheRecord() {
    calibrate(bench.soundPoints(), "--meter-scale", "4", "--meter-scale-percent", "0.2").exits(0);
    assertEquals("bench meter over 4 A/V (± 0.2 %)", bench.only().head().meter().make());
    assertEquals(0.3, bench.only().head().meter().accuracyPercentOfReading(), 1e-12);
    assertEquals(0.4, bench.only().head().meter().resolution(), 1e-12);
  }

  @Test
  void shouldCalibrateFromARecording() {
    Path wav = folder.resolve("levels.wav");
    PairScale scale =
        new PairScale(
            new ChannelScale(CalibrateBench.AMPS_PER_COUNT, 0),
            new ChannelScale(CalibrateBench.VOLTS_PER_COUNT, 0));
    double[] levels = {0, 125, 250, 375, 500, 375, 250, 125, 0};
    try (RecordingWriter writer = new RecordingWriter(wav, 500, scale)) {
      for (double level : levels) {
        bench.load.amps(level);
        write(writer, 500 * 14);
      }
    }
    bench.booth.source("[source]\nkind = \"recording\"\nfile = \"levels.wav\"\nspeed = \"full\"\n");
    bench.booth.write();
    CommandRun run = recorded("--accept").exits(0);
    assertTrue(bench.only().isAccepted(), run.out());
  }

  @Test
  void shouldSayThatARecordingEndsTooSoon() {
    Path wav = folder.resolve("levels.wav");
    PairScale scale = new PairScale(new ChannelScale(0.3, 0), new ChannelScale(0.03, 0));
    try (RecordingWriter writer = new RecordingWriter(wav, 500, scale)) {
      write(writer, 500 * 14);
    }
    bench.booth.source("[source]\nkind = \"recording\"\nfile = \"levels.wav\"\nspeed = \"full\"\n");
    bench.booth.write();
    assertTrue(recorded().exits(1).err().contains("the source ended"));
    assertEquals(1, bench.only().points().size());
  }

  private CommandRun recorded(String... more) {
    return bench.runOnItsSource(
        "current", "--points", bench.soundPoints(), CalibrateBench.meter(), List.of(more));
  }

  private void write(RecordingWriter writer, int pairs) {
    short[] current = new short[pairs];
    short[] voltage = new short[pairs];
    for (int i = 0; i < pairs; i++) {
      current[i] = bench.load.current(i);
      voltage[i] = bench.load.voltage(i);
    }
    writer.write(current, voltage, pairs);
  }
}
