package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published load points and the trade's rules, not our simulator. */
class DirectionTest {

  private static final Procedure STICK =
      SyntheticRun.procedure(Process.MANUAL_METAL_ARC, Characteristic.CONSTANT_CURRENT, false);
  private static final Procedure WIRE =
      SyntheticRun.procedure(Process.MAG, Characteristic.CONSTANT_VOLTAGE, false);

  private static double step(double t, double before, double inside) {
    return t > 8 && t < 12 ? inside : before;
  }

  /** A spell from 8 to 12 s at other amps and volts, as the judging finds it. */
  private static ExplainedSpell spell(
      Procedure procedure, double[] steady, double[] there, Quantity quantity, Side side) {
    RunProfile profile =
        SyntheticRun.profile(
            20, t -> step(t, steady[0], there[0]), t -> step(t, steady[1], there[1]), 0.005);
    return SyntheticRun.reader(procedure, SchoolScales.NONE)
        .read(profile, List.of(new Spell(quantity, side, 8.6, 12.4)), RunFacts.NONE)
        .spells()
        .get(0);
  }

  /**
   * Drooping sources: 20 to 25 V moves 123 to 115 A with 80 V open circuit, and 123 to 100 A with
   * 50 V (distributor's glossary that reproduces a welding handbook's figure).
   */
  @ParameterizedTest
  @CsvSource({"115", "100"})
  void shouldTellALongArcOnPublishedDroops(double amps) {
    ExplainedSpell found =
        spell(STICK, new double[] {123, 20}, new double[] {amps, 25}, Quantity.VOLTS, Side.HIGH);
    assertEquals(Cause.ARC_LONGER, found.cause());
    assertEquals(5, found.evidence().deltaVolts(), 0.1);
    assertEquals(amps - 123, found.evidence().deltaAmps(), 0.5);
    assertTrue(found.confidence() > 0.997);
  }

  /** The other way round: 25 to 20 V, for a procedure of 25 V. */
  @ParameterizedTest
  @CsvSource({"115", "100"})
  void shouldTellAShortArcOnPublishedDroops(double amps) {
    Procedure longer =
        SyntheticRun.procedure(
            Process.MANUAL_METAL_ARC,
            Characteristic.CONSTANT_CURRENT,
            new Window(Quantity.AMPS, amps - 15, amps + 15),
            new Window(Quantity.VOLTS, 22, 28),
            false);
    ExplainedSpell found =
        spell(longer, new double[] {amps, 25}, new double[] {123, 20}, Quantity.VOLTS, Side.LOW);
    assertEquals(Cause.ARC_SHORTER, found.cause());
  }

  /** A steep source holds its amps: the volts tell all the same. Common practice, no source. */
  @Test
  void shouldTellALongArcOnASteepSource() {
    ExplainedSpell found =
        spell(STICK, new double[] {120, 20}, new double[] {120, 25}, Quantity.VOLTS, Side.HIGH);
    assertEquals(Cause.ARC_LONGER, found.cause());
  }

  /**
   * A longer distance at a fixed feed lowers the current (welding journal, direction only); the
   * volts stay.
   */
  @ParameterizedTest
  @CsvSource({"100, LOW, STICK_OUT_LONGER", "146, HIGH, STICK_OUT_SHORTER"})
  void shouldTellStickOutByAmpsAlone(double amps, Side side, Cause cause) {
    ExplainedSpell found =
        spell(WIRE, new double[] {122, 20}, new double[] {amps, 20.1}, Quantity.AMPS, side);
    assertEquals(cause, found.cause());
  }

  @ParameterizedTest
  @CsvSource({
    "CONSTANT_CURRENT, 150, 20.5, AMPS, HIGH, MACHINE_SETTING, NONE",
    "CONSTANT_CURRENT, 92, 20, AMPS, LOW, MACHINE_SETTING, NONE",
    "CONSTANT_CURRENT, 122, 26, VOLTS, HIGH, CANNOT_TELL, ARC_OR_SET_UP",
    "CONSTANT_CURRENT, 103, 27, AMPS, LOW, ARC_LONGER, NONE",
    "CONSTANT_VOLTAGE, 160, 24, AMPS, HIGH, MACHINE_SETTING, NONE",
    "CONSTANT_VOLTAGE, 160, 24, VOLTS, HIGH, MACHINE_SETTING, NONE",
    "CONSTANT_VOLTAGE, 122, 25, VOLTS, HIGH, MACHINE_SETTING, NONE",
    "CONSTANT_VOLTAGE, 95, 16, AMPS, LOW, MACHINE_SETTING, NONE",
    "CONSTANT_VOLTAGE, 98, 20.3, AMPS, LOW, CANNOT_TELL, STICK_OUT_OR_FEED"
  })
  void shouldTellTheMachineFromTheFirstSecondOn(
      Characteristic source,
      double amps,
      double volts,
      Quantity quantity,
      Side side,
      Cause cause,
      Doubt doubt) {
    Procedure procedure = source == Characteristic.CONSTANT_CURRENT ? STICK : WIRE;
    RunProfile profile = SyntheticRun.profile(15, t -> amps, t -> volts, 0.005);
    ExplainedSpell found =
        SyntheticRun.reader(procedure, SchoolScales.NONE)
            .read(profile, List.of(new Spell(quantity, side, 1, 15)), RunFacts.NONE)
            .spells()
            .get(0);
    assertEquals(cause, found.cause());
    assertEquals(doubt, found.doubt());
  }

  @Test
  void shouldNameNothingThatTheUncertaintyDoesNotSupport() {
    RunProfile profile = SyntheticRun.profile(20, t -> 120, t -> step(t, 22.8, 23.1), 0.04);
    ExplainedSpell found =
        SyntheticRun.reader(STICK, SchoolScales.NONE)
            .read(profile, List.of(new Spell(Quantity.VOLTS, Side.HIGH, 8.6, 12.4)), RunFacts.NONE)
            .spells()
            .get(0);
    assertEquals(Cause.CANNOT_TELL, found.cause());
    assertEquals(Doubt.TOO_SMALL, found.doubt());
    assertEquals(0, found.confidence());
  }

  @Test
  void shouldGiveTheArcsChangeInMillimetresOnceTheSchoolHasMeasuredTwo() {
    SchoolScales scales = new SchoolScales(null, ArcLengthScale.of(2, 20, 5, 26, 0.2, 0.1));
    RunProfile profile =
        SyntheticRun.profile(20, t -> step(t, 120, 115), t -> step(t, 20, 25), 0.002);
    ExplainedSpell found =
        SyntheticRun.reader(STICK, scales)
            .read(profile, List.of(new Spell(Quantity.VOLTS, Side.HIGH, 8.6, 12.4)), RunFacts.NONE)
            .spells()
            .get(0);
    assertEquals(2.5, found.lengthChangeMm().value(), 0.1);
    assertTrue(found.lengthChangeMm().uncertainty() > 0.2);
  }

  @Test
  void shouldSayNothingOfAlternatingCurrentFromItsTrace() {
    double[] mean = new double[200];
    double[] high = new double[200];
    double[] low = new double[200];
    Arrays.fill(high, 100);
    Arrays.fill(low, -100);
    RunProfile profile = new RunProfile(mean, low, high, mean, low, high);
    TechniqueReading reading =
        SyntheticRun.reader(STICK, SchoolScales.NONE)
            .read(profile, List.of(new Spell(Quantity.AMPS, Side.LOW, 1, 10)), RunFacts.NONE);
    assertEquals(Doubt.ALTERNATING, reading.spells().get(0).doubt());
  }
}
