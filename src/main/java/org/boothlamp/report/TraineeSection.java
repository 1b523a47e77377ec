package org.boothlamp.report;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongFunction;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Polarity;

/** One trainee's passes, and each of his runs with a chart, as a part of a shift's page. */
final class TraineeSection {

  private final ShiftReport report;
  private final ShiftWords words;
  private final LongFunction<RunStrip> strips;
  private final Markup page;

  /** A flag that every run has is said once elsewhere, not at every run. */
  private final boolean allUncalibrated;

  /**
   * @param strips a run's chart by its id; null where there is none
   */
  TraineeSection(ShiftReport report, ShiftWords words, LongFunction<RunStrip> strips, Markup page) {
    this.report = report;
    this.words = words;
    this.strips = strips;
    this.page = page;
    this.allUncalibrated = report.allRuns().stream().allMatch(r -> r.has(RunFlag.UNCALIBRATED));
  }

  void append(GlanceRow row, String anchor) {
    TraineeSummary trainee = row.summary();
    page.open("details", "open", "open", "id", anchor).open("summary");
    page.leaf("h2", words.trainee(trainee.trainee())).text(" ");
    page.leaf("span", words.lookAt(row), "class", "sub").close();
    touches(trainee);
    Map<RunSummary, List<TouchRecord>> before = touchesBefore(row);
    for (PassSummary pass : trainee.passes()) {
      pass(pass);
      List<RunSummary> own =
          row.runs().stream().filter(run -> pass.pass().isOf(run.run())).toList();
      page.open("div", "class", "strips");
      own.forEach(run -> run(run, before.get(run)));
      page.close();
    }
    page.close();
  }

  private void touches(TraineeSummary trainee) {
    if (trainee.touches() > 0) {
      String touches = words.touches(trainee.touches(), trainee.stuck());
      page.leaf("p", words.say("touches.between", touches));
    }
  }

  private void pass(PassSummary summary) {
    Figures figures = summary.figures();
    page.leaf("h3", words.pass(summary.pass()));
    page.leaf(
        "p",
        words.say(
            "pass.figures",
            words.runs(figures.runs()),
            Durations.words(figures.arcSeconds()),
            words.share(figures.insideShare()),
            mean(figures.meanAmps(), summary.pass(), Quantity.AMPS),
            mean(figures.meanVolts(), summary.pass(), Quantity.VOLTS)));
    if (!figures.excursions().isEmpty()) {
      page.leaf("p", words.say("outside", words.excursions(figures.excursions())));
    }
  }

  private String mean(double value, PassKey pass, Quantity quantity) {
    String side = words.side(value, pass.window(quantity));
    return Words.value(quantity, value) + (side.isEmpty() ? "" : " (" + side + ")");
  }

  private void run(RunSummary summary, List<TouchRecord> touches) {
    RunRecord run = summary.run();
    PassKey pass = PassKey.of(run);
    String start = start(summary);
    page.open("div", "class", "run")
        .open("p")
        .leaf("strong", words.say("run.name", Long.toString(run.id()), start))
        .text(" ");
    page.text(
        words.say(
            "run.figures",
            Durations.words(run.lengthSeconds()),
            mean(run.amps(), pass, Quantity.AMPS),
            mean(run.volts(), pass, Quantity.VOLTS),
            words.share(run.insideShare())));
    page.close();
    chart(summary, start);
    String notes = String.join("; ", notes(summary, touches));
    if (!notes.isEmpty()) {
      page.leaf("p", notes);
    }
    String technique = words.technique(run);
    if (!technique.isEmpty()) {
      page.leaf("p", technique);
    }
    page.close();
  }

  /** The time of day; where it is not known, the time since the monitor's start. */
  private String start(RunSummary summary) {
    RunRecord run = summary.run();
    return summary.has(RunFlag.NO_TIME)
        ? words.say("run.untimed", Durations.words(run.startSeconds()))
        : TimesOfDay.words(run.startWallMillis(), report.span());
  }

  private void chart(RunSummary summary, String start) {
    RunStrip strip =
        summary.run().polarity() == Polarity.AC ? null : strips.apply(summary.run().id());
    if (strip != null && strip.size() > 0) {
      String length = Durations.words(summary.run().lengthSeconds());
      StripChart.draw(page, summary, strip, words.say("chart", start, length));
    }
  }

  private List<String> notes(RunSummary summary, List<TouchRecord> touches) {
    RunRecord run = summary.run();
    List<String> notes = new ArrayList<>();
    if (!summary.excursions().isEmpty()) {
      notes.add(words.say("outside", words.excursions(summary.excursions())));
    }
    String side = words.side(run.lengthSeconds(), run.window(Quantity.ARC_S));
    if (!side.isEmpty()) {
      notes.add(words.say("length", side));
    }
    if (run.arcOuts() > 0) {
      notes.add(words.count("arc-outs", run.arcOuts()));
    }
    if (!touches.isEmpty()) {
      long stuck = touches.stream().filter(TouchRecord::stuck).count();
      notes.add(words.say("touches.before", words.touches(touches.size(), stuck)));
    }
    notes.addAll(words.said(run));
    if (run.polarity() == Polarity.AC) {
      notes.add(words.say("chart.ac"));
    }
    for (RunFlag flag : summary.flags()) {
      if (flag != RunFlag.UNCALIBRATED || !allUncalibrated) {
        notes.add(words.flag(flag));
      }
    }
    return notes;
  }

  /** The touches of a trainee by the run that came next; those after the last run are left out. */
  private Map<RunSummary, List<TouchRecord>> touchesBefore(GlanceRow row) {
    Map<RunSummary, List<TouchRecord>> before = new IdentityHashMap<>();
    List<TouchRecord> own =
        report.touches().stream()
            .filter(touch -> touch.trainee().equals(row.summary().trainee()))
            .toList();
    int from = 0;
    for (RunSummary summary : row.runs()) {
      int until = from;
      while (!summary.has(RunFlag.NO_TIME)
          && until < own.size()
          && isBefore(own.get(until), summary)) {
        until++;
      }
      before.put(summary, own.subList(from, until));
      from = until;
    }
    return before;
  }

  private static boolean isBefore(TouchRecord touch, RunSummary summary) {
    return touch.startWallMillis() < summary.run().startWallMillis();
  }
}
