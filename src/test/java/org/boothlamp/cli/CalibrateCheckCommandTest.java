package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.Channel;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One point between two calibrations. */
class CalibrateCheckCommandTest {

  @TempDir Path folder;
  private CalibrateBench bench;

  @BeforeEach
  void setUp() {
    bench = new CalibrateBench(folder);
  }

  private CommandRun check(String reference, Object... more) {
    return bench.run(
        "check", "current", "--technician", "K-2", "--reference", reference, List.of(more));
  }

  private List<CalibrationCheck> checks() {
    return bench.book.checks(Channel.CURRENT);
  }

  @Test
  void shouldFailWithoutACalibrationWhereTheSensorIsFartherOffThanStated() {
    bench.load.amps(100);
    CommandRun run = check("100").exits(1);
    assertTrue(
        run.out().contains("FAILED  booth 107 A, reference 100 A, error 6.999 A"), run.out());
    assertTrue(run.out().contains("limit 2.5 A, not calibrated"), run.out());
    assertTrue(run.out().contains("Control limits need 8 checks"), run.out());
    assertEquals(107, checks().get(0).reading(), 0.05);
    assertEquals(2.5, checks().get(0).limit(), 1e-9);
    assertEquals(10_000, checks().get(0).readings());
  }

  @Test
  void shouldPassByTheCalibrationInUseAndCompareWithTheOnesBefore() {
    bench
        .run("current", "--points", bench.soundPoints(), CalibrateBench.meter(), "--accept")
        .exits(0);
    bench.load.amps(100);
    check("100", "--meter-make", "bench meter").exits(0);
    double uncertainty = bench.only().finish().uncertainty().at(100);
    assertEquals(uncertainty, checks().get(0).limit(), 1e-3);
    assertEquals(1, checks().get(0).calibrationNumber());
    assertEquals("bench meter", checks().get(0).meter());
    CommandRun second = check("100").exits(0);
    assertTrue(second.out().contains("the last 2 checks"), second.out());
    assertEquals(2, checks().size());
  }

  @Test
  void shouldAddWhatTheMeterItselfMayBeOff() {
    bench.load.amps(100);
    check("100", "--accuracy-percent", "4", "--accuracy-counts", "3", "--resolution", "0.2")
        .exits(0);
    assertEquals(2.5 + 4 + 0.6 + 0.1, checks().get(0).limit(), 1e-9);
  }

  @Test
  void shouldNoteNothingIfTheReferenceCannotBeMeant() {
    bench.load.amps(100);
    CommandRun run = check("100000").exits(1);
    assertTrue(run.err().contains("is it in mA?"), run.err());
    assertTrue(run.err().contains("Nothing was noted"), run.err());
    assertEquals(List.of(), checks());
  }

  @Test
  void shouldGiveUpOnALoadThatDrifts() {
    bench.load.drifting(0.001);
    CommandRun run = check("0").exits(1);
    assertTrue(run.err().contains("no ten steady seconds within --patience, 120 s"), run.err());
  }

  @Test
  void shouldNeedEitherAReferenceOrAMeter() {
    CommandRun run = bench.run("check", "current", "--technician", "K-2").exits(2);
    assertTrue(run.err().contains("--reference X, or let --meter PORT read it"), run.err());
  }

  @Test
  void shouldRefuseANameForACode() {
    CommandRun run =
        bench.run("check", "voltage", "--technician", "J. S.", "--reference", "1").exits(2);
    assertTrue(run.err().contains("never a name"), run.err());
  }
}
