package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.settings.CountRange;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.junit.jupiter.api.Test;

class HardwareCheckTest {

  private static final SourceFormat FOURTEEN_BITS =
      new SourceFormat(10_000, -8_192, 8_191, "board 1");
  private static final SourceFormat TEN_BITS = new SourceFormat(1_000, -512, 511, "board 2");

  private static PairScale scale(double amps, double volts, int counts) {
    return new PairScale(new ChannelScale(amps / counts, 0), new ChannelScale(volts / counts, 0));
  }

  private static JudgingPlan plan(Polarity current, Window... windows) {
    Pass pass = new Pass("fill", List.of(windows), Double.NaN, Double.NaN);
    Procedure procedure =
        new Procedure(
            "X-1",
            "1",
            Process.MAG,
            current,
            Characteristic.CONSTANT_VOLTAGE,
            Double.NaN,
            List.of(pass));
    return new JudgingPlan(
        procedure,
        pass,
        new ChannelUncertainties(
            new ExpandedUncertainty(2.5, 0), new ExpandedUncertainty(0.5, 0), false));
  }

  private static JudgingPlan stick(Polarity current) {
    return plan(current, new Window(Quantity.AMPS, 95, 125), new Window(Quantity.VOLTS, 20, 26));
  }

  private static List<Finding> check(PairScale scale, SourceFormat heard, JudgingPlan... plans) {
    return new HardwareCheck(scale, List.of(plans), heard, null).findings();
  }

  private static List<Finding> notGood(List<Finding> findings) {
    return findings.stream().filter(f -> f.state() != Finding.State.GOOD).toList();
  }

  @Test
  void shouldFindNothingWrongWithPartsThatFit() {
    List<Finding> findings = check(scale(660, 130, 8_192), FOURTEEN_BITS, stick(Polarity.DC_PLUS));
    assertEquals(List.of(), notGood(findings));
    assertEquals(
        List.of(
            "board 1 gives counts from -8192 to 8191, as it says itself",
            "0.0806 A a count; -659.9 to 659.8 A before it clips",
            "narrowest window X-1 fill, 95 to 125 A: amber within 3.00 A, which is 37.2 counts",
            "0.0159 V a count; -130.0 to 130.0 V before it clips",
            "narrowest window X-1 fill, 20 to 26 V: amber within 0.600 V, which is 37.8 counts",
            "measured at 10000 pairs/s"),
        findings.stream().map(Finding::detail).toList());
  }

  @Test
  void shouldNoteACountThatIsCoarseForTheNarrowestWindow() {
    List<Finding> findings =
        notGood(
            check(
                scale(660, 130, 512),
                new SourceFormat(5_000, -512, 511, "board 3"),
                stick(Polarity.DC_PLUS),
                plan(Polarity.DC_PLUS, new Window(Quantity.VOLTS, 15, 18))));
    assertEquals(
        List.of(
            "narrowest window X-1 fill, 95 to 125 A: amber within 3.00 A, which is 2.3 counts; too"
                + " coarse",
            "narrowest window X-1 fill, 15 to 18 V: amber within 0.500 V, which is 2.0 counts; too"
                + " coarse"),
        findings.stream().map(Finding::detail).toList());
    assertTrue(findings.stream().allMatch(f -> f.nextMove().contains("more bits")));
  }

  @Test
  void shouldCallAClippedWindowBad() {
    Finding finding =
        notGood(check(scale(120, 130, 8_192), FOURTEEN_BITS, stick(Polarity.DC_PLUS))).get(0);
    assertEquals(Finding.State.BAD, finding.state());
    assertEquals("current", finding.part());
    assertEquals(
        "X-1 fill, 95 to 125 A, needs 125.0 A (dc+), but the channel clips at 120.0 A",
        finding.detail());
  }

  @Test
  void shouldNeedTheNegativeSideForElectrodeNegative() {
    PairScale oneSided =
        new PairScale(new ChannelScale(0.1, -8_192), new ChannelScale(130.0 / 8_192, 0));
    assertEquals(List.of(), notGood(check(oneSided, FOURTEEN_BITS, stick(Polarity.DC_PLUS))));
    assertEquals(
        Finding.State.BAD,
        notGood(check(oneSided, FOURTEEN_BITS, stick(Polarity.DC_MINUS))).get(0).state());
  }

  @Test
  void shouldNoteThatOpenCircuitVoltsAreClipped() {
    List<Finding> findings =
        notGood(check(scale(660, 50, 8_192), FOURTEEN_BITS, stick(Polarity.DC_PLUS)));
    assertEquals(1, findings.size());
    assertEquals(Finding.State.NOTE, findings.get(0).state());
    assertEquals(
        "clips at 50.0 V; an open circuit may stand at 113 V (EN 60974-1)",
        findings.get(0).detail());
  }

  @Test
  void shouldSayThatASlowSourceCannotCountShortCircuits() {
    Window shorts = new Window(Quantity.SHORTS_PER_S, 20, 120);
    List<Finding> findings = check(scale(660, 130, 512), TEN_BITS, plan(Polarity.DC_PLUS, shorts));
    Finding last = findings.get(findings.size() - 1);
    assertEquals("not measured at 1000 pairs/s, but X-1 fill limits them", last.detail());
    assertEquals(Finding.State.NOTE, last.state());
  }

  @Test
  void shouldTakeTwelveBitsAndSaySoIfTheSourceIsNotHeard() {
    List<Finding> findings = check(scale(600, 130, 2_048), null, stick(Polarity.DC_PLUS));
    assertEquals("the source was not heard: a 12-bit converter is taken", findings.get(0).detail());
    assertEquals("0.293 A a count; -599.7 to 599.4 A before it clips", findings.get(1).detail());
    assertTrue(findings.get(findings.size() - 1).detail().startsWith("not known"));
  }

  @Test
  void shouldTakeTheCountsThatTheSettingsStateIfTheSourceIsNotHeard() {
    CountRange stated = new CountRange(-8_192, 8_191);
    PairScale scale = scale(660, 130, 8_192);
    List<Finding> findings =
        new HardwareCheck(scale, List.of(stick(Polarity.DC_PLUS)), null, stated).findings();
    assertEquals(
        "the source was not heard: counts from -8192 to 8191 are taken, as the settings state",
        findings.get(0).detail());
    assertEquals("0.0806 A a count; -659.9 to 659.8 A before it clips", findings.get(1).detail());
  }

  @Test
  void shouldBelieveTheSourceRatherThanTheSettings() {
    CountRange stated = new CountRange(-8, 7);
    List<Finding> findings =
        new HardwareCheck(scale(660, 130, 8_192), List.of(), FOURTEEN_BITS, stated).findings();
    assertEquals(
        "board 1 gives counts from -8192 to 8191, as it says itself", findings.get(0).detail());
  }

  @Test
  void shouldTakeCountsFromZeroUpIfTheZeroLiesInTheirMiddle() {
    PairScale upward = new PairScale(new ChannelScale(0.3, 2_048), new ChannelScale(0.06, 2_048));
    assertEquals(
        "0.3 A a count; -614.1 to 613.8 A before it clips", check(upward, null).get(1).detail());
  }

  @Test
  void shouldSayThatARecordingHasNoHardware() {
    assertEquals(1, check(null, FOURTEEN_BITS, stick(Polarity.DC_PLUS)).size());
  }
}
