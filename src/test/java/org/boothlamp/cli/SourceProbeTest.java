package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.boothlamp.health.HealthFault;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.junit.jupiter.api.Test;

/** What a short listening says of each fault. */
class SourceProbeTest {

  private static final int RATE = 5_000;
  private static final int BLOCK_PAIRS = 50;

  private static PairScript script() {
    return PairScript.at(RATE);
  }

  private static JudgingPlan plan(Polarity current) {
    return Plans.of(current, Plans.amps(95, 125));
  }

  private static List<Finding> listen(PairScript script, double seconds, List<JudgingPlan> plans) {
    ScriptedSource source = new ScriptedSource(RATE).pairs(script, BLOCK_PAIRS);
    HandTurnedClock clock = new HandTurnedClock();
    return new SourceProbe(source, clock, plans, seconds).listen(PairScript.SCALE);
  }

  private static List<Finding> faults(List<Finding> findings) {
    return findings.stream().filter(finding -> finding.fault() != null).toList();
  }

  private static Finding about(HealthFault fault, List<Finding> findings) {
    return findings.stream()
        .filter(f -> f.fault() != null && f.fault().word().equals(fault.word()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void shouldGiveALineForEveryFaultWithItsLimit() {
    List<Finding> faults = faults(listen(script().idle(4), 3, List.of(plan(Polarity.DC_PLUS))));
    assertEquals(
        Arrays.stream(HealthFault.values()).map(HealthFault::word).toList(),
        faults.stream().map(finding -> finding.fault().word()).toList());
    for (Finding finding : faults) {
      assertTrue(finding.detail().startsWith(finding.fault().word() + ": "), finding.detail());
      assertTrue(finding.detail().endsWith("limit: " + finding.fault().limit()), finding.detail());
      assertEquals(finding.fault().judged(), finding.state() == Finding.State.GOOD);
    }
  }

  @Test
  void shouldSayWhatItCouldNotJudgeWhileNobodyWelds() {
    List<Finding> findings = listen(script().idle(4), 3, List.of(plan(Polarity.DC_PLUS)));
    assertEquals(
        List.of(
            HealthFault.CLIPPED.word(),
            HealthFault.ZERO_DRIFT.word(),
            HealthFault.NOISE.word(),
            HealthFault.GAPS.word(),
            HealthFault.SAMPLE_RATE.word()),
        faults(findings).stream()
            .filter(finding -> finding.fault().judged())
            .map(finding -> finding.fault().word())
            .toList());
    assertEquals(
        "wrong polarity: not judged, no arc burned; limit: against the procedure for 0.3 s",
        about(HealthFault.WRONG_POLARITY, findings).detail());
    assertEquals(
        "clock drift: not judged, it takes 33 s (less than 2 % so far); limit: 0.5 % off this"
            + " computer's clock",
        about(HealthFault.CLOCK_DRIFT, findings).detail());
    Finding last = findings.get(findings.size() - 1);
    assertEquals("7 of 12 faults could not be judged in 3 s", last.detail());
    assertTrue(last.nextMove().contains("--listen 40"), last.nextMove());
  }

  @Test
  void shouldJudgeAllOfThemInALongListeningToARun() {
    PairScript run = script().idle(2).arc(110, 23, 5).idle(40);
    List<Finding> findings = listen(run, 40, List.of(plan(Polarity.DC_PLUS)));
    assertTrue(faults(findings).stream().allMatch(finding -> finding.fault().judged()));
    assertEquals(1 + HealthFault.values().length, findings.size(), "nothing else to say");
  }

  @Test
  void shouldSayWhichProceduresTheCurrentFits() {
    PairScript run = script().idle(0.5).arc(110, 23, 2);
    List<Finding> findings =
        listen(run, 3, List.of(plan(Polarity.DC_PLUS), plan(Polarity.DC_MINUS)));
    Finding polarity = about(HealthFault.WRONG_POLARITY, findings);
    assertEquals(Finding.State.GOOD, polarity.state());
    assertTrue(
        polarity.detail().contains("the current is dc+, fits S-1 (dc+), not S-1 (dc-)"),
        polarity.detail());
  }

  @Test
  void shouldCallACurrentThatFitsNoProcedureWrong() {
    PairScript run = script().idle(0.5).arc(-110, -23, 2);
    Finding polarity =
        about(HealthFault.WRONG_POLARITY, listen(run, 3, List.of(plan(Polarity.DC_PLUS))));
    assertEquals(Finding.State.BAD, polarity.state());
    assertEquals(
        "wrong polarity: the current is dc-, which fits no procedure: not S-1 (dc+); limit: against"
            + " the procedure for 0.3 s",
        polarity.detail());
    assertEquals(HealthFault.WRONG_POLARITY.nextMove(), polarity.nextMove());
  }

  @Test
  void shouldNotJudgeThePolarityOfSensorsThatDisagree() {
    PairScript run = script().idle(0.5).arc(-110, 23, 2);
    List<Finding> findings = listen(run, 3, List.of(plan(Polarity.DC_PLUS)));
    assertEquals(Finding.State.BAD, about(HealthFault.SENSORS_DISAGREE, findings).state());
    assertTrue(
        about(HealthFault.WRONG_POLARITY, findings).detail().contains("the sensors disagree"));
  }

  @Test
  void shouldNameWhatIsSeenAndItsNextMove() {
    Finding lost =
        about(
            HealthFault.AMPS_WITHOUT_VOLTS,
            listen(script().idle(0.5).arc(110, 0, 2), 3, List.of()));
    assertEquals(Finding.State.BAD, lost.state());
    assertTrue(lost.fault().judged());
    assertEquals(HealthFault.AMPS_WITHOUT_VOLTS.nextMove(), lost.nextMove());
  }
}
