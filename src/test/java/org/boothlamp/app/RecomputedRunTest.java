package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.report.Recalculation;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunTrace;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.Calibrations;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A run that was recorded with a wrong scale and is computed again under the right calibration,
 * against the same run recorded with the right scale.
 */
class RecomputedRunTest {

  private static final int RATE = 5_000;
  private static final PairScale RIGHT = PairScript.SCALE;

  /** 4 % low, zero 1.5 A off. */
  private static final ChannelScale WRONG_CURRENT = new ChannelScale(1 / 16.0 / 1.04, 24);

  /** 3 % high, zero 0.4 V off. */
  private static final ChannelScale WRONG_VOLTAGE = new ChannelScale(1 / 128.0 * 1.03, -51);

  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final ExpandedUncertainty U = new ExpandedUncertainty(0.3, 0.001);

  @TempDir Path folder;

  /** A run with what the log keeps to compute it again. */
  private record Kept(RunRecord run, RunTrace trace) {}

  private Kept weld(String name, PairScale scale, PairScript script, Polarity polarity) {
    JudgingPlan plan = Plans.of(polarity, Plans.amps(95, 125), Plans.volts(18, 28));
    Path path = folder.resolve(name + ".db");
    LogQueue queue = new LogQueue();
    BoothLogWriter writer =
        new BoothLogWriter(BoothLog.open(path), "B-07", queue, LogClocks.system(), signIn -> {});
    Monitor monitor =
        new Monitor(
            new ScriptedSource(RATE).pairs(script, 50),
            new SignalRecorder(),
            queue,
            () -> 1_772_434_800_000L,
            new PipelineSettings(scale, ArcRule.STANDARD, JudgingRule.STANDARD),
            new Assignment("T-04", plan));
    while (monitor.step()) {
      assertSame(plan, monitor.assigned().plan());
    }
    monitor.close();
    writer.close();
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      List<RunRecord> runs = reader.read(0, Long.MAX_VALUE).runs();
      assertEquals(1, runs.size());
      return new Kept(runs.get(0), reader.runTrace(runs.get(0).id()));
    }
  }

  private static PairScript script(double idle, int sign) {
    return PairScript.at(RATE)
        .off(idle)
        .arc(sign * 110, sign * 23, 4)
        .arc(sign * 132, sign * 24, 4)
        .arc(sign * 108, sign * 22, 4)
        .off(1);
  }

  private static CalibrationRecord right(Channel channel, ChannelScale wrong) {
    return Calibrations.record(
        4,
        Calibrations.head(channel, wrong, DAY),
        Calibrations.accepted(1_000, channel.of(RIGHT), U, DAY.plusYears(1)),
        null);
  }

  private static Recalculation under(CalibrationRecord record) {
    return new Recalculation(
        record, new CalibrationHistory(List.of(record)), JudgingRule.STANDARD, null);
  }

  private static void assertTruth(RunRecord truth, RunRecord again, double share) {
    assertEquals(truth.meanAmps(), again.meanAmps(), share * U.at(truth.meanAmps()), "mean amps");
    assertEquals(truth.rmsAmps(), again.rmsAmps(), share * U.at(truth.rmsAmps()), "RMS amps");
    assertEquals(truth.meanVolts(), again.meanVolts(), 1e-3, "mean volts");
    assertEquals(truth.rmsVolts(), again.rmsVolts(), 1e-3, "RMS volts");
    assertEquals(truth.energyJoules(), again.energyJoules(), 2e-3 * truth.energyJoules(), "energy");
    assertEquals(truth.meanWatts(), again.meanWatts(), 2e-3 * truth.meanWatts(), "power");
    // Two changes of level in and two out, each up to 0.1 s elsewhere.
    assertEquals(truth.redSeconds(), again.redSeconds(), 0.21, "red");
    assertEquals(truth.greenSeconds(), again.greenSeconds(), 0.41, "green");
    assertEquals(truth.settlingSeconds(), again.settlingSeconds(), 0.11, "settling");
    assertEquals(truth.lengthSeconds(), again.lengthSeconds(), 0.011, "length");
    assertNotNull(truth.notes().technique());
    assertNull(again.notes().technique(), "read in amps and volts that no longer hold");
  }

  @ParameterizedTest
  @CsvSource({"2, 1, DC_PLUS", "2, -1, DC_MINUS", "0, 1, DC_PLUS", "0, -1, DC_MINUS"})
  void shouldGiveTheTruthWithinTheStatedUForAWrongClamp(double idle, int sign, Polarity polarity) {
    PairScale wrong = new PairScale(WRONG_CURRENT, RIGHT.voltage());
    Kept truth = weld("right", RIGHT, script(idle, sign), polarity);
    Kept kept = weld("wrong", wrong, script(idle, sign), polarity);
    assertEquals(idle > 0, kept.trace().zeroKnown());
    assertTrue(
        Math.abs(kept.run().meanAmps() - truth.run().meanAmps()) > 3 * U.at(110), "wrong at first");

    Recalculation again = under(right(Channel.CURRENT, WRONG_CURRENT));
    RunRecord run = again.apply(kept.run(), kept.trace());
    assertTruth(truth.run(), run, 1);
    assertEquals(4, run.calibrations().current());
    assertEquals(1, again.summary().runs());
    assertEquals(idle > 0 ? 0 : 1, again.summary().zeroNotSeen());
  }

  @Test
  void shouldGiveTheTruthForAWrongDivider() {
    PairScale wrong = new PairScale(RIGHT.current(), WRONG_VOLTAGE);
    Kept truth = weld("right", RIGHT, script(2, 1), Polarity.DC_PLUS);
    Kept kept = weld("wrong", wrong, script(2, 1), Polarity.DC_PLUS);
    assertTrue(Math.abs(kept.run().meanVolts() - truth.run().meanVolts()) > 0.5);
    RunRecord run = under(right(Channel.VOLTAGE, WRONG_VOLTAGE)).apply(kept.run(), kept.trace());
    assertTruth(truth.run(), run, 1);
  }

  @Test
  void shouldFindWhatWasJudgedLiveOnTheTraceAgain() {
    Kept kept = weld("right", RIGHT, script(2, 1), Polarity.DC_PLUS);
    RunRecord run = under(right(Channel.CURRENT, RIGHT.current())).apply(kept.run(), kept.trace());
    assertTruth(kept.run(), run, 1e-9);
    assertEquals(List.of(), run.excursions(), "left out, not copied");
  }

  @Test
  void shouldJudgeNothingAtAcAndSaySo() {
    PairScript ac = PairScript.at(RATE).off(2).sine(160, 23, 50, 4).off(1);
    Kept kept = weld("ac", RIGHT, ac, Polarity.AC);
    Recalculation again = under(right(Channel.CURRENT, RIGHT.current()));
    RunRecord run = again.apply(kept.run(), kept.trace());
    assertEquals(kept.run().rmsAmps(), run.rmsAmps(), 1e-6);
    assertEquals(0, run.judgedSeconds());
    assertEquals(1, again.summary().notJudged());
  }

  @Test
  void shouldLeaveARunOfOtherHardwareAsItWas() {
    Kept kept = weld("right", RIGHT, script(2, 1), Polarity.DC_PLUS);
    Recalculation again = under(right(Channel.CURRENT, WRONG_CURRENT));
    assertSame(kept.run(), again.apply(kept.run(), kept.trace()));
    assertEquals(List.of(kept.run().id()), again.summary().otherHardware());
    assertEquals(0, again.summary().runs());
  }
}
