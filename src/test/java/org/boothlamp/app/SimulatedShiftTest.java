package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.acquisition.SimulatedBooth;
import org.boothlamp.acquisition.SimulatedProcess;
import org.boothlamp.acquisition.SimulatedRun;
import org.boothlamp.acquisition.SimulatedSensor;
import org.boothlamp.acquisition.SimulatedSource;
import org.boothlamp.acquisition.SimulatedTrainee;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.boothlog.SegmentTrace;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.PipelineSettings;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.Colour;
import org.boothlamp.report.Glance;
import org.boothlamp.report.GlanceJson;
import org.boothlamp.report.JsonReport;
import org.boothlamp.report.RunStrip;
import org.boothlamp.report.ShiftCsv;
import org.boothlamp.report.ShiftHours;
import org.boothlamp.report.ShiftHtml;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.ShiftTime;
import org.boothlamp.report.TextReport;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.SignalRecorder;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A short simulated shift, always the same, through the whole monitor and the log on disk into
 * every form of the report. Invented, not measured.
 */
class SimulatedShiftTest {

  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final LocalDate DAY = LocalDate.of(2026, 3, 25);
  private static final ShiftSpan SPAN = ShiftSpan.days(DAY, DAY, ZONE);
  private static final List<ShiftHours> HOURS =
      List.of(new ShiftHours("morning", LocalTime.of(7, 0), LocalTime.of(7, 10)));
  private static final PairScale SCALE =
      new PairScale(new ChannelScale(1200.0 / 4096, 0), new ChannelScale(200.0 / 4096, 0));
  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  @TempDir Path folder;
  private Path path;
  private ShiftReport report;
  private Glance glance;

  @BeforeEach
  void weld() {
    path = folder.resolve("booth.db");
    List<SimulatedRun> runs = new ArrayList<>();
    List<Assignment> turns = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      String trainee = List.of("T-04", "T-11", "T-17").get(i / 2);
      runs.add(SimulatedRun.of(2, SimulatedProcess.STICK, hand(i / 2), 9 + i));
      turns.add(new Assignment(trainee, plan()));
    }
    play(SimulatedBooth.of(runs, 20), turns);
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      ShiftRecords records = reader.read(SPAN.fromWallMillis(), SPAN.untilWallMillis());
      report = ShiftReport.of(records, SPAN, "B-03", "Simulated shift");
      ShiftTime time = ShiftTime.of(records, SPAN, HOURS, SPAN.untilWallMillis());
      glance = Glance.of(report, new Glance.Beside(time, List.of(), List.of()));
    }
  }

  private static SimulatedTrainee hand(int trainee) {
    return switch (trainee) {
      case 0 -> SimulatedTrainee.beginner();
      case 1 -> SimulatedTrainee.ofSkill(0.5);
      default -> SimulatedTrainee.good();
    };
  }

  private static JudgingPlan plan() {
    Procedure procedure =
        new Procedure(
            "S-3F-18",
            "1",
            Process.MANUAL_METAL_ARC,
            Polarity.DC_PLUS,
            Characteristic.CONSTANT_CURRENT,
            Double.NaN,
            List.of());
    List<Window> windows =
        List.of(new Window(Quantity.AMPS, 95, 125), new Window(Quantity.VOLTS, 20, 26));
    ChannelUncertainties stated =
        new ChannelUncertainties(
            new ExpandedUncertainty(2.5, 0), new ExpandedUncertainty(0.4, 0), false);
    return new JudgingPlan(procedure, new Pass("fill", windows, Double.NaN, Double.NaN), stated);
  }

  /** First all is measured, then all is written, so that nothing depends on how fast either is. */
  private void play(SimulatedBooth booth, List<Assignment> turns) {
    List<Monitor> monitor = new ArrayList<>();
    SimulatedSource simulated =
        SimulatedSource.of(
            booth,
            SimulatedSensor.of(SCALE).atRate(2_000),
            (index, run) -> monitor.get(0).assign(turns.get(index)));
    long start = DAY.atTime(7, 0).atZone(ZONE).toInstant().toEpochMilli();
    SourceTime source = new SourceTime(simulated, start);
    LogQueue queue = new LogQueue();
    PipelineSettings settings = new PipelineSettings(SCALE, ArcRule.STANDARD, JudgingRule.STANDARD);
    monitor.add(
        new Monitor(source, new SignalRecorder(), queue, source, settings, Assignment.NONE));
    LogClocks clocks =
        new LogClocks(() -> (source.epochMillis() - start) * 1_000_000, source, ZONE);
    BoothLogWriter writer =
        new BoothLogWriter(BoothLog.open(path), "B-03", queue, clocks, signIn -> {});
    while (monitor.get(0).step()) {
      assertEquals(0, queue.lostEntries(), "the queue holds the whole shift");
    }
    monitor.get(0).close();
    writer.close();
  }

  @Test
  void shouldTellTheShiftInEveryForm() throws IOException {
    assertEquals(
        read("simulated.txt"), TextReport.render(report, glance, 80, Colour.PLAIN, Units.METRIC));
    assertEquals(read("simulated.csv"), ShiftCsv.render(report, glance, ENGLISH));
    assertEquals(read("simulated.jsonl"), json());
    assertEquals(read("simulated.html"), html());
  }

  @Test
  void shouldDrawEveryRunFromItsTrace() throws IOException {
    assertEquals(report.runs().size(), html().split("class=\"strip\"", -1).length - 1, "charts");
    assertTrue(report.runs().size() >= 6);
  }

  private String json() throws IOException {
    StringWriter writer = new StringWriter();
    JsonReport.write(report, writer);
    GlanceJson.write(glance, writer);
    return writer.toString();
  }

  private String html() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return ShiftHtml.render(report, glance, id -> strip(reader.trace(id)), ENGLISH, Units.METRIC);
    }
  }

  private static RunStrip strip(SegmentTrace trace) {
    return RunStrip.of(
        trace.meanAmps, trace.lowestAmps, trace.highestAmps, trace.meanVolts, trace.signals);
  }

  private static String read(String file) throws IOException {
    try (InputStream in = SimulatedShiftTest.class.getResourceAsStream("/report/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
