package org.boothlamp.cli;

import java.io.IOException;
import java.io.Writer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongFunction;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentTrace;
import org.boothlamp.report.ChangeAgainstLastShifts;
import org.boothlamp.report.Colour;
import org.boothlamp.report.EarlierRun;
import org.boothlamp.report.Glance;
import org.boothlamp.report.GlanceJson;
import org.boothlamp.report.JsonReport;
import org.boothlamp.report.RunStrip;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftCsv;
import org.boothlamp.report.ShiftHtml;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.ShiftTime;
import org.boothlamp.report.SignInMoment;
import org.boothlamp.report.TextReport;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A shift's report with all that any format shows of it. Immutable.
 *
 * @param report what was welded
 * @param glance the class at a glance
 * @param strips charts by the run's id
 */
record ShiftAnswer(ShiftReport report, Glance glance, Map<Long, RunStrip> strips) {

  private static final long DAY_MILLIS = 86_400_000L;

  /** From when on runs are compared with those of a span. */
  static long lookBackFrom(ShiftSpan span) {
    return span.fromWallMillis() - ChangeAgainstLastShifts.LOOK_BACK_DAYS * DAY_MILLIS;
  }

  /** From when on sign-ins may still hold in a span: they do for a day at most. */
  static long signInsFrom(ShiftSpan span) {
    return span.fromWallMillis() - DAY_MILLIS;
  }

  /** What a log knows beside the shift. */
  static Glance.Beside beside(BoothLogReader reader, ShiftSpan span, ShiftTime time) {
    List<SignInMoment> signIns = reader.signIns(signInsFrom(span), span.untilWallMillis());
    List<EarlierRun> earlier = reader.earlierRuns(lookBackFrom(span), span.fromWallMillis());
    return new Glance.Beside(time, signIns, earlier);
  }

  /** The charts of a report's runs; none if there are too many to draw. */
  static Map<Long, RunStrip> strips(BoothLogReader reader, ShiftReport report) {
    Map<Long, RunStrip> strips = new HashMap<>();
    if (report.allRuns().size() <= ShiftHtml.MOST_CHARTS) {
      for (RunSummary summary : report.allRuns()) {
        SegmentTrace trace = reader.trace(summary.run().id());
        if (trace != null && trace.size() > 0) {
          strips.put(summary.run().id(), strip(trace));
        }
      }
    }
    return strips;
  }

  private static RunStrip strip(SegmentTrace trace) {
    return RunStrip.of(
        trace.meanAmps, trace.lowestAmps, trace.highestAmps, trace.meanVolts, trace.signals);
  }

  /**
   * Writes the report.
   *
   * @param recordings name of a run's raw recording by its id; empty where there is none
   * @param phrases of a page and a table
   * @param units of lengths and what is made of them
   */
  void write(
      ReportFormat format,
      LongFunction<String> recordings,
      Phrases phrases,
      Units units,
      Writer writer,
      int width,
      Colour colour)
      throws IOException {
    switch (format) {
      case TEXT -> writer.write(TextReport.render(report, glance, width, colour, units));
      case JSON -> {
        JsonReport.write(report, recordings, writer);
        GlanceJson.write(glance, writer);
      }
      case HTML -> writer.write(ShiftHtml.render(report, glance, strips::get, phrases, units));
      case CSV -> writer.write(ShiftCsv.render(report, glance, phrases));
    }
  }
}
