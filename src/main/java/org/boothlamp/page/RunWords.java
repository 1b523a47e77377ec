package org.boothlamp.page;

import java.util.StringJoiner;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.Durations;
import org.boothlamp.report.ExcursionTally;
import org.boothlamp.report.Numbers;
import org.boothlamp.report.RunFlag;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.TechniqueWords;

/** What a page says of a run. */
final class RunWords {

  private RunWords() {}

  static String amps(RunRecord run) {
    return Numbers.fixed(run.amps(), 1) + " A";
  }

  static String volts(RunRecord run) {
    return Numbers.fixed(run.volts(), 1) + " V";
  }

  static String weld(RunRecord run) {
    return run.procedureId().isEmpty() ? "–" : run.procedureId() + " · " + run.pass();
  }

  static String trainee(Layout layout, RunRecord run) {
    return run.trainee().isEmpty() ? layout.say("nobody") : run.trainee();
  }

  static String inside(Layout layout, RunRecord run) {
    return Double.isNaN(run.insideShare())
        ? layout.say("page.not-judged")
        : Numbers.share(run.insideShare());
  }

  /** What its amps and volts say of the technique; empty if nothing. */
  static String technique(Layout layout, RunRecord run) {
    return new TechniqueWords(layout.phrases(), layout.units()).sentence(run);
  }

  /** When it left the window and which way: "amps high 2 × 3.0 s". */
  static String excursions(Layout layout, RunSummary summary) {
    StringJoiner words = new StringJoiner("; ");
    for (ExcursionTally tally : summary.excursions()) {
      words.add(
          side(layout, tally) + " " + tally.count() + " × " + Durations.words(tally.seconds()));
    }
    return words.toString();
  }

  /** Both of it. */
  static String remarks(Layout layout, RunSummary summary) {
    String excursions = excursions(layout, summary);
    String flags = flags(layout, summary);
    return excursions + (excursions.isEmpty() || flags.isEmpty() ? "" : "; ") + flags;
  }

  private static String side(Layout layout, ExcursionTally tally) {
    Quantity quantity = tally.quantity();
    return layout.say("page.side." + quantity.key() + "." + tally.side().word());
  }

  /** Why its figures deserve less trust. */
  static String flags(Layout layout, RunSummary summary) {
    StringJoiner words = new StringJoiner("; ");
    for (RunFlag flag : summary.flags()) {
      words.add(layout.say("page.flag." + flag.word().replace(' ', '-')));
    }
    return words.toString();
  }
}
