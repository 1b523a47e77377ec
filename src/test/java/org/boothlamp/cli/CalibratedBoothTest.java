package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.Calibrations;
import org.boothlamp.testing.KnownRecording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A booth with calibrations in its log, from the recording to the report. */
class CalibratedBoothTest {

  private static final LocalDate TODAY = LocalDate.now();
  private static final ExpandedUncertainty SMALL = new ExpandedUncertainty(0.1, 0);

  @TempDir Path folder;
  private BoothFolder booth;
  private KnownRecording recording;

  @BeforeEach
  void setUp() {
    recording = KnownRecording.load("stick-five-runs");
    booth = new BoothFolder(folder);
    booth.procedure(recording);
    booth
        .source(
            "[source]\nkind = \"recording\"\nspeed = \"full\"\nfile = \""
                + booth.recording(recording)
                + "\"\n")
        .defaultProcedure(recording.procedure().id())
        .write();
  }

  private CommandRun run(String command, Object... more) {
    String[] words = command.split(" ");
    Object[] arguments = new Object[words.length + 2 + more.length];
    System.arraycopy(words, 0, arguments, 0, words.length);
    arguments[words.length] = "--settings";
    arguments[words.length + 1] = booth.settings();
    System.arraycopy(more, 0, arguments, words.length + 2, more.length);
    return CommandRun.of(arguments);
  }

  private void calibrate(Channel channel, ChannelScale scale, ExpandedUncertainty u, int dueDays) {
    try (CalibrationBook book = BoothCalibrations.open(booth.log())) {
      ChannelScale nominal = channel.of(recording.scale());
      Calibrations.add(
          book,
          Calibrations.head(channel, nominal, TODAY.minusMonths(2)),
          Calibrations.accepted(
              System.currentTimeMillis() - 60_000, scale, u, TODAY.plusDays(dueDays)));
    }
  }

  private void calibrateBoth(ExpandedUncertainty amps, int dueDays) {
    PairScale scale = recording.scale();
    calibrate(Channel.CURRENT, scale.current(), amps, dueDays);
    calibrate(Channel.VOLTAGE, scale.voltage(), SMALL, dueDays);
  }

  private ShiftRecords logged() {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  private List<String> events() {
    return logged().events().stream().map(EventRecord::what).toList();
  }

  private double amberSeconds() {
    return logged().runs().stream().mapToDouble(RunRecord::amberSeconds).sum();
  }

  @Test
  void shouldNameInEachRunWhatScaledItAndSayNothingAgainstIt() {
    calibrateBoth(SMALL, 200);
    run("run").exits(0);
    for (RunRecord run : logged().runs()) {
      assertEquals(1, run.calibrations().current());
      assertEquals(2, run.calibrations().voltage());
      assertTrue(run.calibrated());
    }
    assertEquals(List.of("started", "stopped"), events());
    String text = run("report", TODAY).exits(0).out();
    assertTrue(text.contains("Calibration: current no. 1 of"), text);
    assertFalse(text.contains("no calibration"), text);
    JsonNode first = run("report", TODAY, "-f", "json").exits(0).objects("run").get(0);
    assertEquals(1, first.get("current_calibration").asInt());
  }

  @Test
  void shouldShowAmberEarlierWithALargerU() {
    calibrateBoth(SMALL, 200);
    run("run").exits(0);
    double amber = amberSeconds();
    Window amps = recording.procedure().passes().get(0).window(Quantity.AMPS);
    ExpandedUncertainty large = new ExpandedUncertainty(0.45 * amps.width(), 0);
    calibrate(Channel.CURRENT, recording.scale().current(), large, 200);
    run("run").exits(0);
    assertTrue(amberSeconds() - amber > amber + 1, amber + " s, then " + amberSeconds());
    assertEquals(3, logged().runs().get(9).calibrations().current());
  }

  @Test
  void shouldMeasureOnWithAnOverdueCalibrationAndDoubtItsRuns() {
    calibrateBoth(SMALL, 0);
    run("run").exits(0);
    assertTrue(events().contains("calibration overdue"), events().toString());
    assertTrue(logged().runs().get(0).calibrated());
    String text = run("report", TODAY).exits(0).out();
    assertTrue(text.contains("OVERDUE since " + TODAY), text);
    assertTrue(text.contains("In 5 of 5 runs, current was scaled by calibration 1"), text);
  }

  @Test
  void shouldGoOnMeasuringWhenAWiderULeavesNoGreen() {
    calibrateBoth(new ExpandedUncertainty(14, 0), 0);
    run("run").exits(0);
    List<RunRecord> runs = logged().runs();
    assertEquals(5, runs.size());
    assertEquals("", runs.get(0).procedureId());
    assertEquals(1, runs.get(0).calibrations().current());
    EventRecord refused =
        logged().events().stream()
            .filter(event -> event.what().equals("sign-in refused"))
            .findFirst()
            .orElseThrow();
    assertTrue(refused.detail().contains("U = 28"), refused.detail());
  }

  @Test
  void shouldComputeRunsAgainUnderTheRightCalibration() {
    ChannelScale right = recording.scale().current();
    ChannelScale wrong = new ChannelScale(right.unitsPerCount() * 0.95, right.zeroCount() + 3);
    calibrate(Channel.CURRENT, wrong, SMALL, 200);
    run("run").exits(0);
    calibrate(Channel.CURRENT, right, new ExpandedUncertainty(0.5, 0.002), 200);

    CommandRun withdrawn =
        run(
                "calibrate withdraw",
                1,
                "--from",
                TODAY.minusDays(1),
                "--reason",
                "clamp was dropped",
                "--technician",
                "K-2")
            .exits(0);
    assertTrue(withdrawn.out().contains("Calibration 2 of"), withdrawn.out());
    assertTrue(withdrawn.out().contains("5 runs since then scaled by it"), withdrawn.out());

    CommandRun doubted = run("report", TODAY).exits(0);
    assertTrue(
        doubted.out().replaceAll("\\s+", " ").contains("withdrawn from " + TODAY.minusDays(1)),
        doubted.out());
    assertEquals(
        5,
        run("report", TODAY, "-f", "json")
            .objects("calibration_use")
            .get(0)
            .get("withdrawn_runs")
            .size());

    CommandRun again = run("report", TODAY, "--calibration", 2, "-f", "json").exits(0);
    List<JsonNode> runs = again.objects("run");
    for (int i = 0; i < runs.size(); i++) {
      double truth = recording.segments().get(i).meanAmps();
      double u = 0.5 + 0.002 * truth;
      assertEquals(truth, runs.get(i).get("mean_amps").asDouble(), u, "run " + i);
      assertEquals(2, runs.get(i).get("current_calibration").asInt());
    }
    assertEquals(5, again.objects("recomputed").get(0).get("runs").asInt());
    String text = run("report", TODAY, "--calibration", 2).exits(0).out();
    assertTrue(text.contains("RECOMPUTED, not as measured: 5 runs"), text);
    assertTrue(text.contains("Not recomputed: excursions"), text);
  }

  @Test
  void shouldRefuseACalibrationThatIsNotThere() {
    run("run").exits(0);
    CommandRun refused = run("report", TODAY, "--calibration", 9).exits(2);
    assertTrue(refused.err().contains("there is no such calibration"), refused.err());
    assertTrue(events().contains("calibration missing"), events().toString());
  }
}
