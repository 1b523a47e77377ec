package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.LoggedRun;
import org.boothlamp.testing.PipelineRun;
import org.junit.jupiter.api.Test;

/** Recordings made by a simulator that shares no code with this project; causes as it set them. */
class RecordedTechniqueTest {

  /** 1 % of the reading and a little more: what a calibrated booth has. */
  private static final ChannelUncertainties UNCERTAINTIES =
      new ChannelUncertainties(
          new ExpandedUncertainty(0.5, 0.01), new ExpandedUncertainty(0.1, 0.01), true);

  private static List<TechniqueReading> read(String name) {
    KnownRecording recording = KnownRecording.load(name);
    Procedure procedure = recording.procedure();
    TechniqueReader reader =
        new TechniqueReader(procedure, procedure.passes().get(0), UNCERTAINTIES, SchoolScales.NONE);
    return LoggedRun.of(PipelineRun.of(recording).entries(), recording.scale()).stream()
        .map(run -> reader.read(run.profile(), run.spells(), run.facts()))
        .toList();
  }

  private static Set<Cause> causes(TechniqueReading reading) {
    return reading.spells().stream()
        .map(ExplainedSpell::cause)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Cause.class)));
  }

  @Test
  void shouldTellLongArcsAndAHotMachineFromEachOtherOnStick() {
    List<TechniqueReading> runs = read("stick-five-runs");
    assertEquals(Set.of(), causes(runs.get(0)));
    assertEquals(Set.of(Cause.ARC_LONGER), causes(runs.get(1)));
    assertEquals(Set.of(Cause.ARC_LONGER), causes(runs.get(2)));
    assertEquals(Set.of(Cause.MACHINE_SETTING), causes(runs.get(3)));
    assertEquals(Set.of(), causes(runs.get(4)));
  }

  @Test
  void shouldTellLongStickOutAndAHotMachineFromEachOtherOnWire() {
    List<TechniqueReading> runs = read("short-arc-four-runs");
    assertEquals(Set.of(), causes(runs.get(0)));
    assertEquals(Set.of(Cause.STICK_OUT_LONGER), causes(runs.get(1)));
    assertFalse(causes(runs.get(2)).contains(Cause.MACHINE_SETTING));
    assertEquals(Set.of(Cause.MACHINE_SETTING), causes(runs.get(3)));
  }

  @Test
  void shouldTellLongArcsAndAColdMachineFromEachOtherOnTig() {
    List<TechniqueReading> runs = read("tig-three-runs");
    assertEquals(Set.of(), causes(runs.get(0)));
    assertEquals(Set.of(Cause.ARC_LONGER), causes(runs.get(1)));
    assertEquals(Set.of(Cause.MACHINE_SETTING), causes(runs.get(2)));
  }

  /** Forty shorts a second in the first three runs, 18.6 in the fourth, which is set too hot. */
  @Test
  void shouldPutTheTransferOfEachWireRunIntoAWord() {
    List<TechniqueReading> runs = read("short-arc-four-runs");
    for (TechniqueReading run : runs.subList(0, 3)) {
      assertEquals(TransferState.STEADY, run.transferState());
      assertEquals(42, run.transfer().shortsPerSecond(), 2);
      assertEquals(1 / run.transfer().shortsPerSecond(), run.transfer().meanCycleSeconds(), 0.001);
    }
    assertEquals(TransferState.TOO_HOT, runs.get(3).transferState());
  }

  @Test
  void shouldSayItSoThatATraineeUnderstands() {
    assertEquals(
        "Volts rose and amps fell once: arc getting long.",
        TechniqueSentence.of(read("stick-five-runs").get(1), 12));
    assertEquals("", TechniqueSentence.of(read("stick-five-runs").get(0), 14));
  }

  @Test
  void shouldFindTheLongArcRunsUnsteadierThanTheOthers() {
    List<TechniqueReading> runs = read("stick-five-runs");
    double clean = runs.get(0).steadiness().spreadPercent();
    assertTrue(runs.get(1).steadiness().spreadPercent() > 3 * clean);
    assertTrue(runs.get(4).steadiness().spreadPercent() < 2 * clean);
  }
}
